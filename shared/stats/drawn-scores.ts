import type { ScoreUncertainty } from './score-uncertainty';
import { DRAWS, drawOrder, logGammaQuantiles, normalDraws } from './score-draws';

export type DrawnScores = {
  /** Logarithm of likelihood times prior, `[cause * DRAWS + draw]`. Written anew by the next answer. */
  logs: Float64Array;
  /** Logarithm of each draw's total over all causes. */
  logTotals: Float64Array;
  /** What each draw counts: the probability that it gives the findings, up to a factor. */
  weights: Float64Array;
};

/** Room for the draws of an answer, kept for the next: 600 kB for 300 causes. */
let room = new Float64Array(0);
/** A part of a total below exp of this is lost in the rounding of the sum. */
const NEGLIGIBLE = -40;

/**
 * Draws the scores of all causes, each by its own streams.
 * @param scores at least one of them finite; -Infinity where a cause is impossible, which then has no draws
 */
export function drawScores(scores: Float64Array, uncertaintyOf: (cause: number) => ScoreUncertainty): DrawnScores {
  const size = scores.length * DRAWS;
  if (room.length < size) room = new Float64Array(size);
  const logs = room;
  const tops = new Float64Array(DRAWS).fill(Number.NEGATIVE_INFINITY);
  for (let cause = 0; cause < scores.length; cause += 1) {
    const score = scores[cause] as number;
    if (score !== Number.NEGATIVE_INFINITY) drawScore({ logs, tops }, { cause, score, ...uncertaintyOf(cause) });
  }
  const totals = new Float64Array(DRAWS);
  for (let cause = 0; cause < scores.length; cause += 1) {
    if (scores[cause] === Number.NEGATIVE_INFINITY) continue;
    for (let m = 0, at = cause * DRAWS; m < DRAWS; m += 1, at += 1) {
      const below = (logs[at] as number) - (tops[m] as number);
      if (below > NEGLIGIBLE) totals[m] = (totals[m] as number) + Math.exp(below);
    }
  }
  const highest = tops.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  return {
    logs,
    logTotals: totals.map((total, m) => (tops[m] as number) + Math.log(total)),
    weights: totals.map((total, m) => total * Math.exp((tops[m] as number) - highest)),
  };
}

/** Draws one cause's score, and raises the tops of the draws where it is the largest so far. */
function drawScore(
  { logs, tops }: { logs: Float64Array; tops: Float64Array },
  { cause, score, gamma, variance }: { cause: number; score: number } & ScoreUncertainty,
): void {
  const spread = Math.sqrt(variance);
  const centre = score - variance / 2;
  const z = normalDraws(2 * cause + 1);
  const skewed = logGammaQuantiles(gamma.k);
  const order = drawOrder(2 * cause);
  for (let m = 0, at = cause * DRAWS; m < DRAWS; m += 1, at += 1) {
    const drawn = centre + (skewed[order[m] as number] as number) + spread * (z[m] as number);
    logs[at] = drawn;
    if (drawn > (tops[m] as number)) tops[m] = drawn;
  }
}
