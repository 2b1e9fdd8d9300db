import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { weightedQuantile } from '../../shared/stats/weighted-quantile';

describe('weightedQuantile', () => {
  it('is where the weights of the sorted sample first reach the target', () => {
    // Whole weights, so that sums are exact in any order.
    const sample = fc.array(fc.record({ value: fc.integer({ min: -20, max: 20 }), weight: fc.integer({ min: 1, max: 9 }) }), { minLength: 1, maxLength: 60 });
    fc.assert(
      fc.property(sample, fc.double({ min: 0.001, max: 1, noNaN: true }), (pairs, share) => {
        const target = share * pairs.reduce((sum, { weight }) => sum + weight, 0);
        let reached = 0;
        const sorted = [...pairs].sort((a, b) => a.value - b.value);
        const expected = sorted.find(({ weight }) => {
          reached += weight;
          return reached >= target;
        })?.value;
        const values = Float64Array.from(pairs, ({ value }) => value);
        expect(weightedQuantile(values, Float64Array.from(pairs, ({ weight }) => weight), target)).toBe(expected);
      }),
      { numRuns: 500, seed: 8 },
    );
  });
});
