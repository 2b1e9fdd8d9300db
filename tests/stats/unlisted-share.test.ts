import { describe, expect, it } from 'vitest';
import { countAll } from '../../shared/stats/evaluate-table';
import type { CodedRecord, Layout } from '../../shared/stats/layout';
import { createRandom } from '../../shared/stats/random';
import { defaultSettings } from '../../shared/stats/settings';
import { unlistedShare } from '../../shared/stats/unlisted-share';
import { createEstimator } from '../../shared/stats/weighted-naive-bayes';
import { simulateFamily } from './simulate-family';
import { recorded, recordOf, smallLayout } from './small-world';

describe('unlistedShare', () => {
  const layout = smallLayout();
  const settings = defaultSettings(layout);

  it('is the smoothed share of causes seen once: by hand (1 + 1/2) / (4 + 1) at the root', () => {
    const counts = countAll(layout, [recordOf(4, [0], []), recordOf(4, [0], []), recordOf(4, [0], []), recordOf(4, [1], [])]);
    expect(unlistedShare(counts, settings, 0)).toBeCloseTo(1.5 / 5, 12);
  });

  it('stays below 1 and above 0, whatever was counted', () => {
    expect(unlistedShare(countAll(layout, []), settings, 4)).toBeLessThan(1);
    expect(unlistedShare(countAll(layout, [recordOf(4, [0], [])]), settings, 4)).toBeLessThan(1);
    const many = Array.from({ length: 500 }, () => recordOf(4, [0], []));
    expect(unlistedShare(countAll(layout, many), settings, 4)).toBeGreaterThan(0);
  });

  it('does not fade along the path where nothing is a singleton: by hand 0.5 / 501 at every level', () => {
    const counts = countAll(layout, Array.from({ length: 500 }, () => recordOf(4, [0], [])));
    for (const node of [0, 1, 2, 3, 4]) expect(unlistedShare(counts, settings, node)).toBeCloseTo(0.5 / 501, 12);
  });

  it('is 0 for plain tables', () => {
    expect(unlistedShare(countAll(layout, [recordOf(4, [0], [])]), { ...settings, unlisted: false }, 4)).toBe(0);
  });
});

/** Mean posterior share of the unlisted cause over some units. */
function meanShare(layout: Layout, casebook: readonly CodedRecord[], units: readonly CodedRecord[]): number {
  const estimator = createEstimator(layout, countAll(layout, casebook), defaultSettings(layout));
  const sum = units.reduce((s, u) => s + (estimator.probabilities(u.device, u.findings)[layout.causeCount] as number), 0);
  return sum / units.length;
}

describe('the unlisted cause', () => {
  const worlds = [21, 22, 23, 24, 25].map((seed) => {
    const family = simulateFamily({ seed, causes: 60, symptoms: 14, checks: 4, fixes: 2, boards: 2, concentration: 1.5 });
    const random = createRandom(seed + 1);
    return { layout: family.layout, records: Array.from({ length: 1200 }, () => family.draw(random)) };
  });

  it('takes up the units of a cause that was taken out of the casebook', () => {
    for (const { layout, records } of worlds) {
      const number = (c: number) => records.filter((r) => r.causes.includes(c)).length;
      const common = Array.from({ length: 60 }, (_, c) => c).sort((a, b) => number(b) - number(a))[2] as number;
      const units = records.filter((r) => r.causes.includes(common));
      const without = records.filter((r) => !r.causes.includes(common));
      expect(meanShare(layout, without, units)).toBeGreaterThan(1.3 * meanShare(layout, records, units));
    }
  });

  it('has a mean share within 2 points of how often unseen causes turn up', () => {
    let share = 0;
    let unseen = 0;
    const rounds = 12 * worlds.length;
    for (const { layout, records } of worlds) {
      for (let from = 0; from < 1200; from += 100) {
        const seen = records.slice(from, from + 60);
        const next = records.slice(from + 60, from + 100);
        const known = new Set(seen.flatMap((r) => r.causes));
        share += meanShare(layout, seen, next) / rounds;
        unseen += next.filter((r) => !known.has(r.causes[0] as number)).length / next.length / rounds;
      }
    }
    expect(unseen).toBeGreaterThan(0.1);
    expect(Math.abs(share - unseen)).toBeLessThan(0.02);
  });

  it('can win: findings that fit no known cause raise it', () => {
    const layout = smallLayout();
    const odd = Array.from({ length: 60 }, (_, i) => recordOf(4, [i % 3], [recorded(0, 1), recorded(1, 1), recorded(2, 1)]));
    const counts = countAll(layout, [...odd, recordOf(4, [3], [recorded(0, 0), recorded(1, 1), recorded(2, 1)])]);
    const estimator = createEstimator(layout, counts, defaultSettings(layout));
    const strange = [recorded(0, 1), recorded(1, 0), recorded(2, 0)];
    const usual = [recorded(0, 1), recorded(1, 1), recorded(2, 1)];
    expect(estimator.probabilities(4, strange)[4]).toBeGreaterThan(3 * (estimator.probabilities(4, usual)[4] as number));
  });
});
