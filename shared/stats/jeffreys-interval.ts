import betaQuantile from '@stdlib/stats-base-dists-beta-quantile';

/** A two-sided interval of a share. */
export type Interval = { low: number; high: number };

/**
 * Jeffreys interval of one proportion: equal-tailed quantiles of Beta(x + 1/2, n - x + 1/2), for whole or fractional
 * counts; plain, with the ends 0 and 1 where nothing or everything succeeded. With no trials it is 0 to 1.
 * Source: Brown, Cai & DasGupta, Statistical Science 16 (2001), 101-133. Throws RangeError on impossible counts.
 */
export function jeffreysInterval(successes: number, trials: number, confidence = 0.9): Interval {
  refuseImpossible(successes, trials, confidence);
  if (trials === 0) return { low: 0, high: 1 };
  const tail = (1 - confidence) / 2;
  const a = successes + 0.5;
  const b = trials - successes + 0.5;
  return {
    low: successes === 0 ? 0 : betaQuantile(tail, a, b),
    high: successes === trials ? 1 : betaQuantile(1 - tail, a, b),
  };
}

/**
 * Modified Jeffreys interval: as Jeffreys, but its ends are opened at the boundary, where plain Jeffreys covers
 * too little (the form tabulated by Brown, Cai & DasGupta 2001, Table A.1).
 */
export function modifiedJeffreysInterval(successes: number, trials: number, confidence = 0.9): Interval {
  const plain = jeffreysInterval(successes, trials, confidence);
  if (trials === 0) return plain;
  const edge = ((1 - confidence) / 2) ** (1 / trials);
  if (successes === 0) return { low: 0, high: 1 - edge };
  if (successes === trials) return { low: edge, high: 1 };
  return { low: successes <= 1 ? 0 : plain.low, high: successes >= trials - 1 ? 1 : plain.high };
}

export function refuseImpossible(successes: number, trials: number, confidence: number): void {
  if (!(successes >= 0 && successes <= trials && Number.isFinite(trials))) {
    throw new RangeError(`There cannot be ${successes} successes in ${trials} trials.`);
  }
  if (!(confidence > 0 && confidence < 1)) throw new RangeError('Confidence lies between 0 and 1.');
}
