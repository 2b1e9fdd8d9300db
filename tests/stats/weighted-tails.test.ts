import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { weightedTails } from '../../shared/stats/weighted-tails';

describe('weightedTails', () => {
  it('is where the weights of the sorted sample first reach the tail, from below and with it left above', () => {
    // Whole weights, so that sums are exact in any order.
    const sample = fc.array(fc.record({ value: fc.integer({ min: -40, max: 20 }), weight: fc.integer({ min: 1, max: 9 }) }), { minLength: 1, maxLength: 80 });
    fc.assert(
      fc.property(sample, fc.double({ min: 0.001, max: 0.45, noNaN: true }), (pairs, share) => {
        const total = pairs.reduce((sum, { weight }) => sum + weight, 0);
        const sorted = [...pairs].sort((a, b) => a.value - b.value);
        const at = (target: number) => {
          let reached = 0;
          return sorted.find(({ weight }) => {
            reached += weight;
            return reached >= target;
          })?.value;
        };
        const values = Float64Array.from(pairs, ({ value }) => value);
        const weights = Float64Array.from(pairs, ({ weight }) => weight);
        expect(weightedTails(values, weights, { tail: share * total, total })).toEqual({ low: at(share * total), high: at(total - share * total) });
        expect([...values]).toEqual(pairs.map(({ value }) => value));
      }),
      { numRuns: 500, seed: 8 },
    );
  });
});
