import betaQuantile from '@stdlib/stats-base-dists-beta-quantile';
import { jeffreysInterval } from '../jeffreys-interval';

/**
 * Results of one fix on the units of one node of the device path. The results need not add up to the tries. A cure that
 * came back later counts in `cameBack` and no longer in `cures`.
 */
export type FixCounts = {
  readonly tries: number;
  readonly cures: number;
  readonly partial: number;
  readonly noChange: number;
  readonly madeWorse: number;
  readonly cameBack: number;
};

export type FixSuccessOptions = {
  /** At most this many borrowed tries from the rest of the device path. Default 4. */
  readonly borrowedTries?: number;
  /** Probability between the ends of each interval, 0 to 1. Default 0.9. */
  readonly confidence?: number;
};

export type FixSuccess = FixCounts & {
  /** Jeffreys interval of the share cured, from the counts of the last node alone. */
  readonly low: number;
  readonly high: number;
  /** Share cured, shrunk toward the rest of the device path, with its interval. */
  readonly estimate: number;
  readonly pooledLow: number;
  readonly pooledHigh: number;
};

/**
 * How often a fix cured. `path` holds its counts from the root of the device path ("any device") to the device asked
 * about, each node including those below it; one node alone is allowed. Only whole cures count as successes; partial
 * cures, no change, made worse and cures that came back later all stand in the denominator.
 *
 * Counted interval: equal-tailed Beta(cures + 1/2, failures + 1/2) (Jeffreys; L. D. Brown, T. T. Cai & A. DasGupta,
 * "Interval estimation for a binomial proportion", Statistical Science 16, 2001), with the ends 0 at no cure and 1 at
 * no failure. With no tries it is 0 to 1: nothing is known.
 *
 * Pooled estimate: from the root down, each node's own units (those not below the next node) update a Beta prior whose
 * mean is the estimate one level up and which is worth at most `borrowedTries` tries, and never more than there were.
 * The root starts from Beta(1/2, 1/2), so that a single node gives the Jeffreys posterior.
 *
 * Throws a RangeError where counts are negative, cures exceed tries, or a node counts more than the one above it.
 */
export function fixSuccess(path: readonly FixCounts[], options: FixSuccessOptions = {}): FixSuccess {
  const { borrowedTries = 4, confidence = 0.9 } = options;
  const last = path.at(-1);
  if (last === undefined) throw new RangeError('fixSuccess needs the counts of at least one node.');
  path.forEach((counts, depth) => assertCounts(counts, path[depth + 1]));
  let cured = 0.5;
  let failed = 0.5;
  path.forEach((counts, depth) => {
    if (depth > 0) {
      const scale = Math.min(1, borrowedTries / (cured + failed));
      cured *= scale;
      failed *= scale;
    }
    const below = path[depth + 1];
    cured += counts.cures - (below?.cures ?? 0);
    failed += counts.tries - counts.cures - ((below?.tries ?? 0) - (below?.cures ?? 0));
  });
  const counted = jeffreysInterval(last.cures, last.tries, confidence);
  const pooled = betaInterval(cured, failed, confidence);
  return {
    ...last,
    low: counted.low,
    high: counted.high,
    estimate: cured / (cured + failed),
    pooledLow: pooled.low,
    pooledHigh: pooled.high,
  };
}

/**
 * Indices of the fixes, best first: by the lower end of the pooled interval, then by the estimate, then by tries.
 * The lower end, so that one cure in one try does not beat forty in fifty.
 */
export function rankFixSuccess(fixes: readonly FixSuccess[]): number[] {
  return fixes
    .map((_, index) => index)
    .sort((a, b) => {
      const [left, right] = [fixes[a]!, fixes[b]!];
      return right.pooledLow - left.pooledLow || right.estimate - left.estimate || right.tries - left.tries || a - b;
    });
}

function betaInterval(alpha: number, beta: number, confidence: number): { low: number; high: number } {
  if (!(confidence > 0 && confidence < 1)) throw new RangeError(`Confidence must lie between 0 and 1, not ${confidence}.`);
  const tail = (1 - confidence) / 2;
  return { low: betaQuantile(tail, alpha, beta), high: betaQuantile(1 - tail, alpha, beta) };
}

function assertCounts(counts: FixCounts, below: FixCounts | undefined): void {
  const { tries, cures, partial, noChange, madeWorse, cameBack } = counts;
  for (const count of [tries, cures, partial, noChange, madeWorse, cameBack]) {
    if (!(count >= 0)) throw new RangeError(`Counts of a fix must not be negative, found ${count}.`);
  }
  if (cures > tries) throw new RangeError(`A fix cannot cure more often (${cures}) than it was tried (${tries}).`);
  if (below !== undefined && (below.cures > cures || below.tries - below.cures > tries - cures)) {
    throw new RangeError('A device counts more cures or failures than the level above it, which must include them.');
  }
}
