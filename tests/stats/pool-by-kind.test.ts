import { describe, expect, it } from 'vitest';
import { countAll } from '../../shared/stats/count-all';
import { fitWeights, lossCurvature, weightLoss } from '../../shared/stats/fit-weights';
import { leaveOneOut } from '../../shared/stats/leave-one-out';
import { poolByKind } from '../../shared/stats/pool-by-kind';
import { createRandom } from '../../shared/stats/random';
import { defaultSettings } from '../../shared/stats/settings';
import { createEstimator } from '../../shared/stats/weighted-naive-bayes';
import { simulateFamily } from './simulate-family';

const family = simulateFamily({ seed: 41, causes: 8, symptoms: 6, checks: 4, fixes: 2, boards: 2, concentration: 3 });
const random = createRandom(42);
const records = Array.from({ length: 120 }, () => family.draw(random));
const { layout } = family;
const counts = countAll(layout, records);
/** Scored at three moments each, at which symptoms, checks and fixes are mixed. */
const heldOut = leaveOneOut(layout, { counts, estimator: createEstimator(layout, counts, defaultSettings(layout)), records }).map(
  (record) => ({ ...record, cuts: [2, 7, record.observables.length].map((n) => Math.min(n, record.observables.length)) }),
);
const towards = Float64Array.of(0.8, 0.8, 0.8);
const full = { heldOut, groupOf: layout.kinds, towards, ridge: 1 };
const pooled = { ...full, heldOut: poolByKind(layout.kinds, heldOut), groupOf: [0, 1, 2] };

describe('records pooled by kind', () => {
  it('have fewer columns, and the same loss and curvature under one exponent per kind', () => {
    const columns = (of: typeof heldOut) => of.reduce((sum, record) => sum + record.observables.length, 0);
    expect(columns(pooled.heldOut)).toBeLessThan(0.6 * columns(heldOut));
    for (const weights of [towards, Float64Array.of(1, 0.3, 2), Float64Array.of(0, 1.5, 0.7)]) {
      expect(weightLoss(pooled, weights)).toBeCloseTo(weightLoss(full, weights), 3);
      const [a, b] = [lossCurvature(pooled, weights), lossCurvature(full, weights)];
      a.forEach((value, i) => expect(value).toBeCloseTo(b[i] as number, 2));
    }
  });

  it('give the same exponents', () => {
    const [a, b] = [fitWeights(pooled), fitWeights(full)];
    a.forEach((weight, kind) => expect(weight).toBeCloseTo(b[kind] as number, 3));
  });

  it('are as they were where nothing was found yet', () => {
    const [record] = heldOut;
    const empty = { ...(record as (typeof heldOut)[0]), observables: Int32Array.of(), columns: Float32Array.of(), cuts: [0] };
    expect(poolByKind(layout.kinds, [empty])).toEqual([empty]);
  });
});
