/**
 * What a check says about the causes: P(outcome | cause), and how far that is believed.
 */
export type CheckTable = {
  /** `table[cause * values + outcome]` = P(outcome | cause), one row per cause, the unlisted cause last. */
  readonly table: Float64Array;
  /** Number of outcomes, at least 1. */
  readonly values: number;
  /** Exponent on the likelihood, >= 0: 1 takes the table at its word, 0 learns nothing from it. */
  readonly weight: number;
};

/** Throws a RangeError that says what is wrong with a check's shape or weight. */
export function assertCheckTable(check: CheckTable, rows: number): void {
  if (!Number.isInteger(check.values) || check.values < 1) {
    throw new RangeError(`A check needs at least one outcome, not ${check.values}.`);
  }
  if (check.table.length !== rows * check.values) {
    throw new RangeError(
      `A check over ${rows} causes and ${check.values} outcomes needs ${rows * check.values} table cells, not ${check.table.length}.`,
    );
  }
  if (!(check.weight >= 0) || !Number.isFinite(check.weight)) {
    throw new RangeError(`A check's weight must be a finite number of at least 0, not ${check.weight}.`);
  }
}

/** Chance of each outcome, sum over causes of p_c P(v | c). Sums to 1 when posterior and table rows do. */
export function predictive(posterior: Float64Array, check: CheckTable): Float64Array {
  const { table, values } = check;
  const chance = new Float64Array(values);
  for (let cause = 0; cause < posterior.length; cause++) {
    const mass = posterior[cause]!;
    if (mass === 0) continue;
    for (let value = 0; value < values; value++) chance[value]! += mass * table[cause * values + value]!;
  }
  return chance;
}

/**
 * Beliefs after an outcome was seen, proportional to p_c P(v | c)^weight. An outcome that no cause with any
 * belief allows says that the table is wrong, not that all causes are: the beliefs are returned unchanged.
 */
export function posteriorAfter(posterior: Float64Array, check: CheckTable, value: number): Float64Array {
  const { table, values, weight } = check;
  const after = new Float64Array(posterior.length);
  let total = 0;
  for (let cause = 0; cause < posterior.length; cause++) {
    const mass = posterior[cause]!;
    if (mass === 0) continue;
    after[cause] = mass * table[cause * values + value]! ** weight;
    total += after[cause]!;
  }
  if (!(total > 0)) return Float64Array.from(posterior);
  for (let cause = 0; cause < after.length; cause++) after[cause]! /= total;
  return after;
}

/** Kullback-Leibler divergence of `after` from `before`, in bits; 0 ln 0 counts as 0. Never negative. */
export function divergenceBits(after: Float64Array, before: Float64Array): number {
  let nats = 0;
  for (let cause = 0; cause < after.length; cause++) {
    const mass = after[cause]!;
    // Two logarithms: the quotient overflows where the belief before was next to nothing.
    if (mass > 0) nats += mass * (Math.log(mass) - Math.log(before[cause]!));
  }
  return Math.max(0, nats / Math.LN2);
}

/**
 * Information about the cause that a check is expected to bring, in bits: the mean, over its outcomes, of the
 * divergence of the beliefs after from the beliefs before. Equals the mutual information of outcome and cause
 * when `weight` is 1 (D. V. Lindley, "On a measure of the information provided by an experiment", Annals of
 * Mathematical Statistics 27, 1956). Never negative; at most the entropy of the beliefs when `weight` is 1.
 */
export function expectedBits(posterior: Float64Array, check: CheckTable): number {
  const chance = predictive(posterior, check);
  let bits = 0;
  for (let value = 0; value < check.values; value++) {
    if (chance[value]! <= 0) continue;
    bits += chance[value]! * divergenceBits(posteriorAfter(posterior, check, value), posterior);
  }
  return bits;
}
