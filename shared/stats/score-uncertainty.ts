import { gammaShapeOfThird, type LogGamma, type LogMoments } from './log-share-moments';
import type { Settings } from './settings';

/** What is not known about one finding's column: moments of its log shares, and the exponent. */
export type IntervalTerm = LogMoments & { weight: number };

/**
 * By which factor of mean 1 one cause's likelihood times prior may be off: its logarithm is that of a Gamma variable of mean 1, for the
 * skewness, plus a normal one of this variance whose mean is minus half of it.
 */
export type ScoreUncertainty = { gamma: LogGamma; variance: number };

/** Gives the uncertainty of each cause's score: that of the sum of its log shares, with the settings' model error on top. */
export function scoreUncertainty(
  { prior, terms, settings }: { prior: { moments: LogMoments }; terms: readonly IntervalTerm[]; settings: Settings },
): (cause: number) => ScoreUncertainty {
  const error = terms.length === 0 ? 0 : settings.modelError.constant + settings.modelError.perFinding * terms.length;
  return (cause) => {
    let variance = prior.moments.variance[cause] as number;
    let third = prior.moments.third[cause] as number;
    for (const term of terms) {
      variance += term.weight ** 2 * (term.variance[cause] as number);
      third += term.weight ** 3 * (term.third[cause] as number);
    }
    const gamma = gammaShapeOfThird(third);
    return { gamma, variance: Math.max(0, variance - gamma.variance) + error };
  };
}
