import { assertCheckTable, type CheckTable } from './check-model';

/**
 * A check's table made ready for many beliefs: `chance[c * values + v]` is P(v | c), the table itself; outcome by outcome
 * `power[v * causes + c]` is that to the weight, and `powerLog` is the power times its natural logarithm (0 where the chance is 0).
 */
export type PreparedCheck = {
  causes: number;
  values: number;
  weight: number;
  chance: Float64Array;
  power: Float64Array;
  powerLog: Float64Array;
};

/** Prepared tables live as long as the tables that they were made of. */
const prepared = new WeakMap<Float64Array, PreparedCheck>();

/** The check made ready; kept with its table, which must not change. Throws a RangeError on a table of the wrong shape. */
export function preparedCheck(check: CheckTable, rows: number): PreparedCheck {
  const known = prepared.get(check.table);
  if (known !== undefined && known.weight === check.weight && known.values === check.values && known.causes === rows) return known;
  assertCheckTable(check, rows);
  const { table, values, weight } = check;
  const made: PreparedCheck = {
    causes: rows,
    values,
    weight,
    chance: table,
    power: new Float64Array(table.length),
    powerLog: new Float64Array(table.length),
  };
  for (let value = 0; value < values; value++) {
    for (let cause = 0; cause < rows; cause++) {
      const at = value * rows + cause;
      const chance = table[cause * values + value]!;
      const power = chance ** weight;
      made.power[at] = power;
      made.powerLog[at] = chance > 0 ? power * weight * Math.log(chance) : 0;
    }
  }
  prepared.set(table, made);
  return made;
}

/**
 * Expected information of a check about the cause, in bits; the same as `expectedBits`. With Z = sum of p_c t_c^w, the
 * divergence of the beliefs after an outcome from those before is (sum of p_c t_c^w log t_c^w) / Z - log Z: two sums of products and
 * one logarithm per outcome.
 */
export function preparedBits(posterior: Float64Array, { causes, values, chance, power, powerLog }: PreparedCheck): number {
  let nats = 0;
  for (let value = 0, at = 0; value < values; value++) {
    let seen = 0;
    let total = 0;
    let logs = 0;
    for (let cause = 0, own = value; cause < causes; cause++, at++, own += values) {
      const mass = posterior[cause]!;
      seen += mass * chance[own]!;
      total += mass * power[at]!;
      logs += mass * powerLog[at]!;
    }
    if (seen > 0 && total > 0) nats += seen * Math.max(0, logs / total - Math.log(total));
  }
  return nats / Math.LN2;
}

/** Chance of one outcome and the beliefs after it; the same as `predictive` and `posteriorAfter`. */
export function preparedOutcome(posterior: Float64Array, ready: PreparedCheck, value: number): { probability: number; after: Float64Array } {
  const { causes, values, chance, power } = ready;
  const after = new Float64Array(causes);
  let probability = 0;
  let total = 0;
  for (let cause = 0, at = value * causes, own = value; cause < causes; cause++, at++, own += values) {
    const mass = posterior[cause]!;
    const left = mass * power[at]!;
    probability += mass * chance[own]!;
    after[cause] = left;
    total += left;
  }
  if (!(total > 0)) return { probability, after: Float64Array.from(posterior) };
  for (let cause = 0; cause < causes; cause++) after[cause]! /= total;
  return { probability, after };
}
