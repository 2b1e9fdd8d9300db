import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { endsBelow, upperTail, weightedTails } from '../../shared/stats/weighted-tails';

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
        const ends = { low: at(share * total), high: at(total - share * total) };
        expect(weightedTails(values, weights, { tail: share * total, total })).toEqual(ends);
        expect(upperTail(values, weights, { tail: share * total, total })).toBe(ends.high);
        for (const limit of [-10.5, 0, ends.low as number, (ends.low as number) + 0.5, Number.NaN, Number.NEGATIVE_INFINITY]) {
          const below = pairs.reduce((sum, { value, weight }) => sum + (value < limit ? weight : 0), 0);
          const isBelow = endsBelow(values, weights, { tail: share * total, limit });
          expect(isBelow).toBe(below > share * total * (1 + 1e-9));
          if (isBelow) expect(ends.low).toBeLessThan(limit);
        }
        expect([...values]).toEqual(pairs.map(({ value }) => value));
      }),
      { numRuns: 500, seed: 8 },
    );
  });
});
