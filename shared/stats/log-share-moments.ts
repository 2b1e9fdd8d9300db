import polygamma from '@stdlib/math-base-special-polygamma';
import trigamma from '@stdlib/math-base-special-trigamma';

/** Variance and third cumulant of the logarithm of a share that is not known exactly. */
export type LogMoments = { variance: Float64Array; third: Float64Array };

/**
 * Moments of log p where p is Beta(mean * worth, (1 - mean) * worth): trigamma and tetragamma of the first parameter
 * less those of the sum (N. L. Johnson, S. Kotz & N. Balakrishnan, Continuous Univariate Distributions 2, ch. 25).
 * A share of 0 or 1 is taken as known.
 */
export function logShareMoments(mean: Float64Array, worth: Float64Array): LogMoments {
  const variance = new Float64Array(mean.length);
  const third = new Float64Array(mean.length);
  mean.forEach((m, c) => {
    const n = worth[c] as number;
    if (m <= 0 || m >= 1) return;
    variance[c] = Math.max(0, trigamma(m * n) - trigamma(n));
    third[c] = Math.min(0, polygamma(2, m * n) - polygamma(2, n));
  });
  return { variance, third };
}

const GRID_STEP = 0.05;

/** A Gamma variable of mean 1 and shape k, and the variance of its logarithm. */
export type LogGamma = { k: number; variance: number };

let grid: (LogGamma & { size: number })[] | undefined;

/**
 * The Gamma shape whose logarithm has the given third cumulant, the nearest on a fine grid, with the variance of that logarithm. A
 * cumulant near 0 gives the largest shape of the grid, which is all but normal.
 */
export function gammaShapeOfThird(third: number): LogGamma {
  grid ??= Array.from({ length: 440 }, (_, i) => {
    const k = Math.exp(-6 + i * GRID_STEP);
    return { k, variance: trigamma(k), size: Math.log(-polygamma(2, k)) };
  });
  const target = Math.log(Math.max(-third, 1e-12));
  let low = 0;
  let high = grid.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((grid[middle]?.size as number) > target) low = middle;
    else high = middle;
  }
  return grid[high] as LogGamma;
}
