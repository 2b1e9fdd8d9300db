import { describe, expect, it } from 'vitest';
import { cornishFisher } from '../../shared/stats/cornish-fisher';

const Z = 1.6448536269514722;
/** Cumulants of the chi-square distribution: n, 2n, 8n and 48n. */
const chiSquare = (n: number) => ({ mean: n, variance: 2 * n, third: 8 * n, fourth: 48 * n });

describe('cornishFisher', () => {
  // NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.4: critical values of the chi-square distribution.
  it.each([
    [10, 3.94, 18.307],
    [20, 10.851, 31.41],
    [50, 34.764, 67.505],
  ])('is near the 5 %% and 95 %% points of chi-square with %i degrees of freedom', (n, low, high) => {
    expect(Math.abs(cornishFisher(chiSquare(n), -Z) - low)).toBeLessThan(0.02);
    expect(Math.abs(cornishFisher(chiSquare(n), Z) - high)).toBeLessThan(0.02);
  });

  it('is exact for a normal distribution, and the mean where nothing varies', () => {
    expect(cornishFisher({ mean: 3, variance: 4, third: 0, fourth: 0 }, Z)).toBeCloseTo(3 + 2 * Z, 12);
    expect(cornishFisher({ mean: 3, variance: 0, third: 0, fourth: 0 }, Z)).toBe(3);
  });
});
