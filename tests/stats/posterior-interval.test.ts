import { describe, expect, it } from 'vitest';
import { createCoverageBoard } from '../../shared/stats/coverage-board';
import { countAll } from '../../shared/stats/evaluate-table';
import { posteriorInterval } from '../../shared/stats/posterior-interval';
import { createRandom } from '../../shared/stats/random';
import { mixIn, normaliseLogScores } from '../../shared/stats/score';
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
    settings.modelError = { constant: 0, perFinding: 0, thinDevice: 0, thinCasebook: 0 };
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

  it('draws only the causes that may matter, and no end of any cause moves by much', () => {
    const random = createRandom(12);
    const causes = 200;
    const uniform = (low: number, high: number) => low + (high - low) * random();
    const column = (low: number, high: number) => Float64Array.from({ length: causes }, () => uniform(low, high));
    // Variances of the logarithm of shares that 3 to 300 records stand behind, and third cumulants to match (about minus their squares).
    const moments = () => {
      const variance = column(0.003, 0.3);
      return { variance, third: variance.map((v) => -(v ** 2)) };
    };
    const layout = simulateFamily({ seed: 3, causes: 20, symptoms: 12, checks: 6, fixes: 2, boards: 1, concentration: 4 }).layout;
    const settings = { ...defaultSettings(layout), modelError: { constant: 0.05, perFinding: 0.01, thinDevice: 0, thinCasebook: 0 } };
    const drawn = { ends: 0, apart: 0, furthest: 0 };
    const small = { low: { ends: 0, bias: 0, furthest: 0 }, high: { ends: 0, bias: 0, furthest: 0 } };
    for (let round = 0; round < 40; round += 1) {
      const scores = column(-14, -4).map((score) => score - 3 * random());
      for (let leading = 0; leading < 6; leading += 1) scores[leading] = -uniform(1, 5);
      const unmixed = normaliseLogScores(scores);
      const prior = { probability: new Float64Array(causes).fill(1 / causes), moments: moments() };
      const terms = [0.8, 1, 0.6].map((weight) => ({ ...moments(), weight }));
      const input = { scores, probability: mixIn(unmixed, prior.probability, settings.mixing), prior, terms, settings };
      const [all, some] = [posteriorInterval(input, 0), posteriorInterval(input)];
      for (const side of ['low', 'high'] as const) {
        some[side].forEach((end, cause) => {
          const full = all[side][cause] as number;
          if (end === full || (unmixed[cause] as number) >= 0.002) {
            drawn.ends += 1;
            drawn.apart += Math.abs(end - full);
            drawn.furthest = Math.max(drawn.furthest, Math.abs(end - full));
          } else {
            small[side].ends += 1;
            small[side].bias += Math.log(end / full);
            small[side].furthest = Math.max(small[side].furthest, Math.abs(end - full));
          }
        });
      }
    }
    // An end is one of 256 draws: the weights of the draws change by little, yet the next draw may be the end.
    expect(drawn.furthest).toBeLessThan(0.02);
    expect(drawn.apart / drawn.ends).toBeLessThan(0.0002);
    for (const { ends, bias, furthest } of [small.low, small.high]) {
      expect(ends).toBeGreaterThan(2_000);
      expect(furthest).toBeLessThan(0.002);
      expect(Math.abs(bias / ends)).toBeLessThan(0.03);
    }
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
