import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { type Interval, refuseImpossible } from './jeffreys-interval';

/**
 * Wilson's score interval of one proportion. With no trials it is 0 to 1.
 * Source: E. B. Wilson, JASA 22 (1927), 209-212; values in Newcombe, Statistics in Medicine 17 (1998), 857-872.
 */
export function wilsonInterval(successes: number, trials: number, confidence = 0.9): Interval {
  refuseImpossible(successes, trials, confidence);
  return wilsonScoreInterval(successes, trials, normalQuantile((1 + confidence) / 2, 0, 1));
}

/** Wilson's interval at a given normal quantile `z`; its lower end alone is the one-sided limit. */
export function wilsonScoreInterval(successes: number, trials: number, z: number): Interval {
  if (trials === 0) return { low: 0, high: 1 };
  const share = successes / trials;
  const centre = share + (z * z) / (2 * trials);
  const half = z * Math.sqrt((share * (1 - share)) / trials + (z * z) / (4 * trials * trials));
  const scale = 1 + (z * z) / trials;
  return {
    low: successes === 0 ? 0 : Math.max(0, (centre - half) / scale),
    high: successes === trials ? 1 : Math.min(1, (centre + half) / scale),
  };
}
