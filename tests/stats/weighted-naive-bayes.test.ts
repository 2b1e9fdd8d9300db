import { describe, expect, it } from 'vitest';
import { countAll } from '../../shared/stats/evaluate-table';
import type { CodedRecord } from '../../shared/stats/layout';
import { createRandom, shuffle } from '../../shared/stats/random';
import { defaultSettings } from '../../shared/stats/settings';
import { createEstimator } from '../../shared/stats/weighted-naive-bayes';
import { recorded, recordOf, smallLayout } from './small-world';
import { simulateFamily } from './simulate-family';

const family = simulateFamily({ seed: 5, causes: 15, symptoms: 12, checks: 6, fixes: 3, boards: 3, concentration: 3 });
const random = createRandom(6);
const records = Array.from({ length: 300 }, () => family.draw(random));
const estimator = createEstimator(family.layout, countAll(family.layout, records), defaultSettings(family.layout));
const total = (p: Float64Array) => p.reduce((a, b) => a + b, 0);

describe('createEstimator', () => {
  it('gives probabilities that sum to 1 with the unlisted share', () => {
    for (const { device, findings } of records.slice(0, 50)) {
      expect(total(estimator.probabilities(device, findings))).toBeCloseTo(1, 12);
      expect(total(estimator.prior(device))).toBeCloseTo(1, 12);
    }
  });

  it('does not care for the order of findings', () => {
    for (const { device, findings } of records.slice(0, 30)) {
      const shuffled = shuffle([...findings], createRandom(9));
      const one = estimator.probabilities(device, findings);
      estimator.probabilities(device, shuffled).forEach((p, c) => {
        expect(Math.abs(p - (one[c] as number))).toBeLessThan(1e-12);
      });
    }
  });

  it('counts the same finding twice once', () => {
    const { device, findings } = records[0] as CodedRecord;
    expect(estimator.probabilities(device, [...findings, ...findings])).toEqual(estimator.probabilities(device, findings));
  });

  it('gives the prior where nothing was found: what is missing changes nothing', () => {
    estimator.probabilities(5, []).forEach((p, c) => {
      expect(p).toBeCloseTo(estimator.prior(5)[c] as number, 12);
    });
  });

  it('keeps each estimate within its interval', () => {
    const { probability, low, high } = estimator.posterior(4, (records[3] as CodedRecord).findings);
    probability.forEach((p, c) => {
      expect(low[c]).toBeLessThanOrEqual(p);
      expect(high[c]).toBeGreaterThanOrEqual(p);
    });
  });

  it('gives a sensible answer on an empty casebook: all causes alike, and mostly unlisted', () => {
    const empty = createEstimator(family.layout, countAll(family.layout, []), defaultSettings(family.layout));
    const p = empty.probabilities(4, [{ observable: 0, value: 1 }]);
    expect(total(p)).toBeCloseTo(1, 12);
    expect(p.every((x) => x >= 0)).toBe(true);
  });
});

describe('pooling along the device path', () => {
  const layout = smallLayout();
  const settings = { ...defaultSettings(layout), unlisted: false };
  const many = (n: number, device: number, cause: number) => Array.from({ length: n }, () => recordOf(device, [cause], [recorded(0, 1)]));

  it('lets a board with many cases speak for itself', () => {
    const counts = countAll(layout, [...many(400, 4, 1), ...many(400, 5, 2)]);
    const prior = createEstimator(layout, counts, settings).prior(4);
    expect(prior[1]).toBeGreaterThan(0.85);
  });

  it('lets a new board of a model borrow from its sister', () => {
    const counts = countAll(layout, [...many(50, 4, 1), ...many(50, 9, 2)]);
    const prior = createEstimator(layout, counts, settings).prior(5);
    expect(prior[1]).toBeGreaterThan(2 * (prior[2] as number));
  });

  it('answers for a device that nobody has posted with what is known of all', () => {
    const counts = countAll(layout, [...many(60, 4, 1), ...many(20, 5, 2)]);
    const prior = createEstimator(layout, counts, settings).prior(9);
    expect(prior[1]).toBeGreaterThan(prior[2] as number);
    expect(prior[2]).toBeGreaterThan(prior[3] as number);
  });

  it("carries a cause's rate over to another maker's board with the very same part", () => {
    // Board 4 (part class 0) fails by cause 0; board 5 of the same model carries another part and does not.
    const counts = countAll(layout, [...many(40, 4, 0), ...many(40, 4, 1), ...many(80, 5, 1)]);
    const shared = createEstimator(layout, counts, settings).prior(9);
    const apart = { ...layout, partClasses: layout.partClasses.slice() };
    apart.partClasses[9 * 4] = -1;
    const alone = createEstimator(apart, countAll(apart, [...many(40, 4, 0), ...many(40, 4, 1), ...many(80, 5, 1)]), settings).prior(9);
    expect(shared[0]).toBeGreaterThan(1.2 * (alone[0] as number));
  });

  it("carries a check's outcomes over with the same part", () => {
    const seen = [
      ...Array.from({ length: 30 }, () => recordOf(4, [0], [recorded(3, 2)])),
      ...Array.from({ length: 30 }, () => recordOf(5, [0], [recorded(3, 1)])),
    ];
    const near = { ...settings, values: settings.values.map((kind) => ({ ...kind, levels: [20, 20, 20, 20], part: 60 })) as typeof settings.values };
    const table = createEstimator(layout, countAll(layout, seen), near).outcomeTable(9, 3).table;
    expect(table[2]).toBeGreaterThan(table[1] as number);
  });
});
