import { describe, expect, it } from 'vitest';
import { addRecord, createCounts } from '../../shared/stats/counts';
import { defaultSettings } from '../../shared/stats/settings';
import { createEstimator } from '../../shared/stats/weighted-naive-bayes';
import { BOARDS, recorded, recordOf, smallLayout } from './small-world';

/** The small layout, where check 3 is said to clear cause 0 by its value 0; its exponent is `weight`. */
function learned(weight: number) {
  const layout = { ...smallLayout(), clearing: Uint8Array.of(0, 0, 0, 1, 0, 0) };
  const counts = createCounts(layout);
  for (const [cause, value] of [[1, 0], [1, 0], [2, 0], [3, 0], [3, 2], [0, 1]] as const) {
    addRecord(counts, recordOf(BOARDS[0], [cause], [recorded(3, value)]));
  }
  const settings = defaultSettings(layout);
  settings.weights.fill(weight);
  return createEstimator(layout, counts, settings);
}

describe('a check that clears causes', () => {
  it('counts in full against the causes it clears, though its exponent is below 1', () => {
    const { table, weight } = learned(0.6).outcomeTable(BOARDS[0], 3);
    const full = learned(1).outcomeTable(BOARDS[0], 3).table;
    expect((table[0] as number) ** weight).toBeCloseTo(full[0] as number, 12);
    expect(table[1 * 3]).toBeCloseTo(full[1 * 3] as number, 12);
  });

  it('keeps every row of shares a distribution', () => {
    const { table } = learned(0.6).outcomeTable(BOARDS[0], 3);
    for (let c = 0; c <= 4; c += 1) expect(table.slice(c * 3, c * 3 + 3).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
  });

  it('is taken at its word where no record of a cleared cause speaks: a working value is seldom seen under it', () => {
    const shares = learned(1).outcomeTable(BOARDS[0], 3).table;
    expect(shares[0]).toBeLessThan(0.2);
    expect(shares[3]).toBeGreaterThan(0.6);
  });

  it('is scored the same by the table and by the finding', () => {
    const estimator = learned(0.6);
    const { table, weight } = estimator.outcomeTable(BOARDS[0], 3);
    const before = estimator.logScores(BOARDS[0], []);
    estimator.logScores(BOARDS[0], [{ observable: 3, value: 0 }]).forEach((score, c) => {
      expect(score - (before[c] as number)).toBeCloseTo(weight * Math.log(table[c * 3] as number), 10);
    });
  });
});
