import { drawScores } from './drawn-scores';
import { errorBin } from './fit-model-error';
import type { LogMoments } from './log-share-moments';
import { DRAWS } from './score-draws';
import { type IntervalTerm, scoreUncertainty } from './score-uncertainty';
import type { Settings } from './settings';
import { endsBelow, upperTail, weightedTails } from './weighted-tails';

type Input = {
  /** Log scores per cause, -Infinity where a cause is impossible. */
  scores: Float64Array;
  probability: Float64Array;
  prior: { probability: Float64Array; moments: LogMoments };
  terms: readonly IntervalTerm[];
  settings: Settings;
  /** Records of the casebook. */
  records: number;
};

/** Ends of a 90 % interval. */
const TAIL = 0.05;
/** Quantile of the standard normal distribution that leaves `TAIL` above it. */
const TAIL_QUANTILE = 1.6448536269514722;

/** More than what a logarithm and its exponential lose by rounding. */
const ROUNDING = 1e-9;

/**
 * 90 % interval of each P(cause | findings). Each cause's likelihood times prior is not known exactly: it is its
 * estimate times a factor of mean 1 whose logarithm has the variance and third cumulant of the sum of its
 * log shares (a log-Gamma part for the skewness, a normal one for the rest), with the model error of the settings on
 * top. The factors are drawn. A draw counts by the probability that it gives the findings, so that the draws' mean is the
 * estimate. The interval holds the middle nine tenths of each cause's share over the draws. An end that stands for less than one
 * record of the whole casebook is 0, or 1 at the top: of n records, none having what comes once in n is the likeliest thing there is
 * (e^-1; J. A. Hanley & A. Lippman-Hand, JAMA 249 (1983), 1743-1745), so they cannot tell it from what never comes. Deterministic.
 */
export function posteriorInterval(input: Input): { low: Float64Array; high: Float64Array } {
  const { scores, settings, probability, prior } = input;
  const low = new Float64Array(scores.length);
  const high = new Float64Array(scores.length);
  const { logs, logTotals, weights } = drawScores(scores, scoreUncertainty(input));
  const total = weights.reduce((a, b) => a + b, 0);
  const shares = new Float64Array(DRAWS);
  const least = (settings.modelError.leastRecords ?? 1) / (input.records + 1);
  for (let cause = 0; cause < scores.length; cause += 1) {
    const estimate = probability[cause] as number;
    if (estimate <= 0) continue;
    const kept = settings.mixing * (prior.probability[cause] as number);
    let ends = { low: kept, high: kept };
    if (scores[cause] !== Number.NEGATIVE_INFINITY) {
      for (let m = 0, at = cause * DRAWS; m < DRAWS; m += 1, at += 1) shares[m] = (logs[at] as number) - (logTotals[m] as number);
      // Most causes of most answers lie so low that their lower end is 0 whatever it is exactly: that is told without putting draws in order.
      const isLost = endsBelow(shares, weights, { tail: TAIL * total, limit: Math.log((least - kept) / (1 - settings.mixing)) - ROUNDING });
      const tails = { tail: TAIL * total, total };
      const found = isLost ? { low: Number.NEGATIVE_INFINITY, high: upperTail(shares, weights, tails) } : weightedTails(shares, weights, tails);
      ends = { low: (1 - settings.mixing) * Math.exp(found.low) + kept, high: (1 - settings.mixing) * Math.exp(found.high) + kept };
    }
    const variance = settings.modelError.byEstimate?.[errorBin(estimate)] ?? 0;
    const bottom = widened({ end: Math.min(ends.low, estimate), estimate, variance, towards: -1 });
    const top = widened({ end: Math.max(ends.high, estimate), estimate, variance, towards: 1 });
    low[cause] = bottom < least ? 0 : bottom;
    high[cause] = 1 - top < least ? 1 : top;
  }
  return { low, high };
}

type End = { end: number; estimate: number; variance: number; towards: -1 | 1 };

/** Moves one end of an interval away from the estimate: on the scale of log odds, independent errors add as variances. */
function widened({ end, estimate, variance, towards }: End): number {
  if (variance === 0 || end <= 0 || end >= 1 || estimate >= 1) return end;
  const middle = Math.log(estimate / (1 - estimate));
  const reach = Math.hypot(Math.log(end / (1 - end)) - middle, TAIL_QUANTILE * Math.sqrt(variance));
  return 1 / (1 + Math.exp(-(middle + towards * reach)));
}
