import { describe, expect, it } from 'vitest';
import { createCoverageBoard } from '../../shared/stats/coverage-board';
import { countAll } from '../../shared/stats/evaluate-table';
import { createRandom } from '../../shared/stats/random';
import { defaultSettings } from '../../shared/stats/settings';
import { createEstimator } from '../../shared/stats/weighted-naive-bayes';
import { simulateFamily } from './simulate-family';

/** Coverage of parameter intervals (no model error) on worlds of the model's own family with its own concentrations. */
function coverage(cases: number) {
  const board = createCoverageBoard();
  for (let seed = 1; seed <= 6; seed += 1) {
    const family = simulateFamily({ seed, causes: 20, symptoms: 12, checks: 6, fixes: 2, boards: 1, concentration: 4 });
    const random = createRandom(seed + 100);
    const records = Array.from({ length: cases }, () => family.draw(random));
    const settings = defaultSettings(family.layout);
    settings.weights.fill(1);
    settings.mixing = 0;
    settings.modelError = { constant: 0, perFinding: 0, leastRecords: 0 };
    for (const kind of settings.values) Object.assign(kind, { offTarget: 4, levels: [1e6, 1e6, 1e6, 1e6] });
    settings.prior = { ...settings.prior, root: 14, levels: [1e6, 1e6, 1e6, 40] };
    const estimator = createEstimator(family.layout, countAll(family.layout, records), settings);
    for (let i = 0; i < 150; i += 1) {
      const { device, findings } = family.draw(random);
      const seen = findings.slice(0, Math.floor(random() * findings.length));
      board.add(estimator.posterior(device, seen), family.posterior(device, seen));
    }
  }
  return board.coverage();
}

describe('posteriorInterval', { timeout: 60_000 }, () => {
  it.each([1000, 3000])('covers the truth nine times in ten with %i cases of its own family', (cases) => {
    const found = coverage(cases);
    expect(found?.covered).toBeGreaterThan(0.88);
    expect(found?.covered).toBeLessThan(0.92);
  });

  it('says 0 or 1 where an end stands for less than one record of the casebook, and changes no other end', () => {
    const family = simulateFamily({ seed: 5, causes: 20, symptoms: 12, checks: 6, fixes: 2, boards: 1, concentration: 0.5 });
    const random = createRandom(9);
    const records = Array.from({ length: 300 }, () => family.draw(random));
    const counts = countAll(family.layout, records);
    const settings = defaultSettings(family.layout);
    const exact = { ...settings, modelError: { ...settings.modelError, leastRecords: 0 } };
    const least = 1 / 301;
    // Hanley & Lippman-Hand 1983: a rate is ruled out at 5 % by none of n from about 3/n on; one in n is far from that.
    expect((1 - least) ** 300).toBeGreaterThan(0.05);
    let [noughts, ones] = [0, 0];
    for (let i = 0; i < 60; i += 1) {
      const { device, findings } = family.draw(random);
      const stated = createEstimator(family.layout, counts, settings).posterior(device, findings);
      const all = createEstimator(family.layout, counts, exact).posterior(device, findings);
      expect(stated.probability).toEqual(all.probability);
      all.low.forEach((low, c) => expect(stated.low[c]).toBe(low < least ? 0 : low));
      all.high.forEach((high, c) => expect(stated.high[c]).toBe(1 - high < least ? 1 : high));
      noughts += all.low.filter((low) => low > 0 && low < least).length;
      ones += all.high.filter((high) => high < 1 && 1 - high < least).length;
    }
    expect(noughts).toBeGreaterThan(100);
    expect(ones).toBeGreaterThan(0);
  });

  it('holds the interval without the model error by size of the estimate, and the estimate itself', () => {
    const family = simulateFamily({ seed: 3, causes: 20, symptoms: 12, checks: 6, fixes: 2, boards: 1, concentration: 4 });
    const random = createRandom(8);
    const counts = countAll(
      family.layout,
      Array.from({ length: 400 }, () => family.draw(random)),
    );
    const plain = createEstimator(family.layout, counts, defaultSettings(family.layout));
    const wide = defaultSettings(family.layout);
    wide.modelError = { ...wide.modelError, byEstimate: [0.3, 0.3, 0.3, 0.3, 0.3] };
    const wider = createEstimator(family.layout, counts, wide);
    for (let i = 0; i < 50; i += 1) {
      const { device, findings } = family.draw(random);
      const [a, b] = [plain.posterior(device, findings), wider.posterior(device, findings)];
      b.probability.forEach((p, c) => {
        expect(b.low[c]).toBeLessThanOrEqual(Math.min(a.low[c] as number, p));
        expect(b.high[c]).toBeGreaterThanOrEqual(Math.max(a.high[c] as number, p));
      });
    }
  });
});
