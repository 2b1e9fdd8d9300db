import trigamma from '@stdlib/math-base-special-trigamma';
import type { CausePrior } from './cause-prior';
import { logSumExp } from './score';
import type { Settings } from './settings';

/** Standard normal quantile at 95 %: the ends of a 90 % interval. */
const Z_90 = 1.6448536269514722;

/** P(v | cause) of one finding, how many records each is worth, and the exponent. */
export type IntervalTerm = { share: Float64Array; worth: Float64Array; weight: number };

type Input = {
  scores: Float64Array;
  probability: Float64Array;
  prior: CausePrior;
  terms: readonly IntervalTerm[];
  settings: Settings;
};

/**
 * 90 % interval of each P(cause | findings): on the log odds scale, from the variances of the logarithms of all shares
 * (a Dirichlet marginal with mean p and worth n is Beta(np, n(1-p)), whose logarithm has variance
 * trigamma(np) - trigamma(n)), carried through the weights (delta method), plus the model error of the settings.
 */
export function posteriorInterval(input: Input): { low: Float64Array; high: Float64Array } {
  const { scores, prior, settings, terms } = input;
  const variances = scoreVariances(input);
  const total = logSumExp(scores);
  const unmixed = scores.map((score) => Math.exp(score - total));
  const error = settings.modelError.constant + settings.modelError.perFinding * terms.length;
  let all = 0;
  for (let c = 0; c < scores.length; c += 1) all += (unmixed[c] as number) ** 2 * (variances[c] as number);
  const low = new Float64Array(scores.length);
  const high = new Float64Array(scores.length);
  for (let c = 0; c < scores.length; c += 1) {
    const p = unmixed[c] as number;
    if (p <= 0) continue;
    const others = Math.max(1 - p, 1e-300);
    const rest = Math.max(0, all - p * p * (variances[c] as number)) / (others * others);
    const spread = Z_90 * Math.sqrt((variances[c] as number) + rest + (terms.length > 0 ? error : 0));
    const logit = (scores[c] as number) - total - Math.log(others);
    const mixed = (q: number) => (1 - settings.mixing) * q + settings.mixing * (prior.probability[c] as number);
    low[c] = Math.min(mixed(logistic(logit - spread)), input.probability[c] as number);
    high[c] = Math.max(mixed(logistic(logit + spread)), input.probability[c] as number);
  }
  return { low, high };
}

/** Variance of each cause's log score: of its prior and, by the squared weight, of each finding's share. */
function scoreVariances({ scores, prior, terms }: Input): Float64Array {
  return scores.map((score, c) => {
    if (score === Number.NEGATIVE_INFINITY) return 0;
    let variance = logShareVariance(prior.probability[c] as number, prior.worth[c] as number);
    for (const { share, worth, weight } of terms) {
      variance += weight * weight * logShareVariance(share[c] as number, worth[c] as number);
    }
    return variance;
  });
}

function logShareVariance(share: number, worth: number): number {
  return Math.max(0, trigamma(share * worth) - trigamma(worth));
}

function logistic(x: number): number {
  return 1 / (1 + Math.exp(-x));
}
