import { errorBin } from './fit-model-error';
import { gammaShapeOfThird, type LogMoments } from './log-share-moments';
import { DRAWS, logGammaDraws, normalDraws } from './score-draws';
import type { Settings } from './settings';
import { weightedQuantile } from './weighted-quantile';

/** What is not known about one finding's column: moments of its log shares, and the exponent. */
export type IntervalTerm = LogMoments & { weight: number };

type Input = {
  /** Log scores per cause, -Infinity where a cause is impossible. */
  scores: Float64Array;
  probability: Float64Array;
  prior: { probability: Float64Array; moments: LogMoments };
  terms: readonly IntervalTerm[];
  settings: Settings;
};

/** Ends of a 90 % interval. */
const TAIL = 0.05;

/**
 * 90 % interval of each P(cause | findings). Each cause's likelihood times prior is not known exactly: it is drawn
 * as its estimate times a factor of mean 1 whose logarithm has the variance and third cumulant of the sum of its
 * log shares (a log-Gamma part for the skewness, a normal one for the rest), with the model error of the settings on
 * top. A draw counts by the probability that it gives the findings, so that the draws' mean is the estimate. The
 * interval holds the middle nine tenths of each cause's share over the draws. Deterministic.
 */
export function posteriorInterval(input: Input): { low: Float64Array; high: Float64Array } {
  const { scores, settings, terms, probability, prior } = input;
  const size = scores.length;
  const error = terms.length === 0 ? 0 : settings.modelError.constant + settings.modelError.perFinding * terms.length;
  const logDraws = new Float64Array(size * DRAWS).fill(Number.NEGATIVE_INFINITY);
  const tops = new Float64Array(DRAWS).fill(Number.NEGATIVE_INFINITY);
  for (let c = 0; c < size; c += 1) {
    if (scores[c] === Number.NEGATIVE_INFINITY) continue;
    const factors = factorDraws(input, c, error);
    for (let m = 0; m < DRAWS; m += 1) {
      const drawn = (scores[c] as number) + (factors[m] as number);
      logDraws[c * DRAWS + m] = drawn;
      if (drawn > (tops[m] as number)) tops[m] = drawn;
    }
  }
  const { draws, totals, weights } = relativeDraws(logDraws, tops);
  const low = new Float64Array(size);
  const high = new Float64Array(size);
  const total = weights.reduce((a, b) => a + b, 0);
  const shares = new Float64Array(DRAWS);
  const ownWeights = new Float64Array(DRAWS);
  for (let c = 0; c < size; c += 1) {
    const p = probability[c] as number;
    if (p <= 0) continue;
    for (let m = 0; m < DRAWS; m += 1) shares[m] = (draws[c * DRAWS + m] as number) / (totals[m] as number);
    ownWeights.set(weights);
    const least = weightedQuantile(shares, ownWeights, TAIL * total);
    const most = weightedQuantile(shares, ownWeights, (1 - TAIL) * total);
    const mixed = (q: number) => (1 - settings.mixing) * q + settings.mixing * (prior.probability[c] as number);
    const known = settings.modelError.byEstimate?.[errorBin(p)] ?? 0;
    low[c] = widened({ end: Math.min(mixed(least), p), estimate: p, variance: known, towards: -1 });
    high[c] = widened({ end: Math.max(mixed(most), p), estimate: p, variance: known, towards: 1 });
  }
  return { low, high };
}

/** Quantile of the standard normal distribution that leaves `TAIL` above it. */
const TAIL_QUANTILE = 1.6448536269514722;

type End = { end: number; estimate: number; variance: number; towards: -1 | 1 };

/** Moves one end of an interval away from the estimate: on the scale of log odds, independent errors add as variances. */
function widened({ end, estimate, variance, towards }: End): number {
  if (variance === 0 || end <= 0 || end >= 1 || estimate >= 1) return end;
  const middle = Math.log(estimate / (1 - estimate));
  const reach = Math.hypot(Math.log(end / (1 - end)) - middle, TAIL_QUANTILE * Math.sqrt(variance));
  return 1 / (1 + Math.exp(-(middle + towards * reach)));
}

/** Draws relative to the largest of each, their totals, and what each draw counts: its total on a common scale. */
function relativeDraws(logDraws: Float64Array, tops: Float64Array) {
  const draws = new Float64Array(logDraws.length);
  const totals = new Float64Array(DRAWS);
  for (let start = 0; start < draws.length; start += DRAWS) {
    if (logDraws[start] === Number.NEGATIVE_INFINITY) continue;
    for (let m = 0; m < DRAWS; m += 1) {
      const drawn = Math.exp((logDraws[start + m] as number) - (tops[m] as number));
      draws[start + m] = drawn;
      totals[m] = (totals[m] as number) + drawn;
    }
  }
  const highest = tops.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const weights = totals.map((total, m) => total * Math.exp((tops[m] as number) - highest));
  return { draws, totals, weights };
}

/** Logarithms of the factors by which one cause's score may be off, mean of the factors 1. */
function factorDraws({ prior, terms }: Input, cause: number, error: number): Float64Array {
  let variance = prior.moments.variance[cause] as number;
  let third = prior.moments.third[cause] as number;
  for (const term of terms) {
    variance += term.weight ** 2 * (term.variance[cause] as number);
    third += term.weight ** 3 * (term.third[cause] as number);
  }
  const skewed = gammaShapeOfThird(third);
  const rest = Math.max(0, variance - skewed.variance) + error;
  const spread = Math.sqrt(rest);
  const z = normalDraws(2 * cause + 1);
  const factors = logGammaDraws(skewed.k, 2 * cause);
  for (let m = 0; m < DRAWS; m += 1) factors[m] = (factors[m] as number) + spread * (z[m] as number) - rest / 2;
  return factors;
}
