import type { ScoreUncertainty } from './score-uncertainty';
import { DRAWS, drawOrder, logGammaQuantiles, normalDraws } from './score-draws';

export type DrawnScores = {
  /** Logarithm of likelihood times prior, `[place * DRAWS + draw]`, place in the list of the causes drawn. Written anew by the next answer. */
  logs: Float64Array;
  /** Logarithm of each draw's total over all causes. */
  logTotals: Float64Array;
  /** What each draw counts: the probability that it gives the findings, up to a factor. */
  weights: Float64Array;
};

/** Room for the draws of an answer, kept for the next: 600 kB where 300 causes are drawn. */
let room = new Float64Array(0);
/** A part of a total below exp of this is lost in the rounding of the sum. */
const NEGLIGIBLE = -40;

/**
 * Draws the scores of some causes, each by its own streams, so that a cause is drawn alike whatever else is.
 * @param causes those drawn, at least one, with finite scores
 * @param logRest logarithm of what all others add to each total
 */
export function drawScores(
  { scores, causes, logRest, uncertaintyOf }: { scores: Float64Array; causes: readonly number[]; logRest: number; uncertaintyOf: (cause: number) => ScoreUncertainty },
): DrawnScores {
  if (room.length < causes.length * DRAWS) room = new Float64Array(causes.length * DRAWS);
  const logs = room;
  const tops = new Float64Array(DRAWS).fill(logRest);
  for (let i = 0; i < causes.length; i += 1) {
    const cause = causes[i] as number;
    drawScore({ logs, from: i * DRAWS, tops }, { cause, score: scores[cause] as number, ...uncertaintyOf(cause) });
  }
  const totals = tops.map((top) => Math.exp(logRest - top));
  for (let at = 0; at < causes.length * DRAWS; ) {
    for (let m = 0; m < DRAWS; m += 1, at += 1) {
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
  { logs, from, tops }: { logs: Float64Array; from: number; tops: Float64Array },
  { cause, score, gamma, variance }: { cause: number; score: number } & ScoreUncertainty,
): void {
  const spread = Math.sqrt(variance);
  const centre = score - variance / 2;
  const z = normalDraws(2 * cause + 1);
  const skewed = logGammaQuantiles(gamma.k);
  const order = drawOrder(2 * cause);
  for (let m = 0; m < DRAWS; m += 1) {
    const drawn = centre + (skewed[order[m] as number] as number) + spread * (z[m] as number);
    logs[from + m] = drawn;
    if (drawn > (tops[m] as number)) tops[m] = drawn;
  }
}
