import { describe, expect, it } from 'vitest';
import { ERROR_BINS, errorBin, fitModelError } from '../../shared/stats/fit-model-error';
import type { HeldOut } from '../../shared/stats/leave-one-out';

/** Two causes, one finding that shares them `odds` to 1 under exponent 1; `right` of `count` units have the first cause. */
function units(odds: number, count: number, right: number): HeldOut[] {
  return Array.from({ length: count }, (_, i) => ({
    observables: Int32Array.of(0),
    columns: Float32Array.of(Math.log(odds), 0),
    logPrior: Float32Array.of(0, 0),
    target: [{ cause: i < right ? 0 : 1, share: 1 }],
    present: 0, cuts: [1],
  }));
}
const one = Float64Array.of(1);
const error = (heldOut: HeldOut[], weights = one, ownWeights = one) => fitModelError([{ heldOut, weights, ownWeights, groupOf: [0] }]);

describe('fitModelError', () => {
  it('finds nothing where the observed share is the estimate', () => {
    const bins = error(units(19, 1000, 950));
    for (const bin of bins) expect(bin).toBeLessThan(1e-3);
  });

  it('gives an estimate of .95 that came true in 3 of 4 units the squared distance of the two log odds', () => {
    // ln 19 - ln 3 = 1.8458; ten pseudo records among 20,000 hardly move it.
    const bins = error(units(19, 20_000, 15_000));
    expect(bins[errorBin(0.95)]).toBeCloseTo((Math.log(19) - Math.log(3)) ** 2, 2);
  });

  it('adds a quarter of the squared difference that the exponents of two halves make', () => {
    // Exponents 1 and 2 put the log odds at ln 19 and 2 ln 19 = 5.889, which is inside the bound of ln 999 = 6.907.
    const bins = error(units(19, 20_000, 19_000), one, Float64Array.of(2));
    expect(bins[errorBin(0.95)]).toBeCloseTo(Math.log(19) ** 2 / 4, 2);
  });

  it('claims little of a bin with hardly a record, and nothing of an empty one', () => {
    // 1 of 2, with 9.5 of 10 pseudo records, is 10.5 to 1.5, so 7 to 1; taken alone it would be 1 to 1, or 8.7.
    expect(error(units(19, 2, 1))[errorBin(0.95)]).toBeCloseTo((Math.log(19) - Math.log(7)) ** 2, 3);
    expect(error([])).toEqual(ERROR_BINS.map(() => 0));
  });
});
