import { describe, expect, it } from 'vitest';
import { evaluateRecords } from '../../shared/stats/evaluate-records';
import { evaluateTable } from '../../shared/stats/evaluate-table';
import { createRandom } from '../../shared/stats/random';
import { CAUSE_COLUMNS, readTable } from '../reference/read-table';
import { simulateFamily } from './simulate-family';

describe('evaluateTable', { timeout: 120_000 }, () => {
  const rows = readTable('zoo');
  const zoo = evaluateTable(rows, CAUSE_COLUMNS.zoo, { folds: 10, repeats: 1, seed: 7 });

  // Figures to reach on the zoo table (R. Forsyth 1990; UCI, CC BY 4.0): accuracy .96, log loss .14, ECE .05.
  it('reaches the figures set for the zoo table, and beats naive Bayes and the prior there', () => {
    const [best, plain, prior] = zoo.results;
    expect(zoo).toMatchObject({ rows: 101, causes: 7, folds: 10 });
    expect(zoo.results.map((r) => r.estimator)).toEqual([
      'blend',
      'naive Bayes',
      'prior',
      'weighted naive Bayes',
      'shrunken AODE',
      'shrunken TAN',
      'logistic regression',
    ]);
    expect(best?.accuracy).toBeGreaterThanOrEqual(0.96);
    expect(best?.logLoss).toBeLessThan(0.14);
    expect(best?.ece).toBeLessThan(0.05);
    expect(best?.logLoss).toBeLessThan(plain?.logLoss as number);
    expect(plain?.logLoss).toBeLessThan(prior?.logLoss as number);
  });

  it('gives the same figures for the same seed', () => {
    const few = { folds: 3, repeats: 1, seed: 5 };
    expect(evaluateTable(rows, 'type', few)).toEqual(evaluateTable(rows, 'type', few));
  });

  it('says what is wrong with a table', () => {
    expect(() => evaluateTable([], 'type')).toThrow(/no rows/);
    expect(() => evaluateTable(rows, 'nonsense')).toThrow(/no column/);
    expect(() => evaluateTable(rows.slice(0, 4), 'type')).toThrow(/cannot fill/);
  });
});

describe('evaluateRecords', { timeout: 120_000 }, () => {
  const family = simulateFamily({ seed: 41, causes: 8, symptoms: 8, checks: 12, fixes: 1, boards: 2, concentration: 2 });
  const random = createRandom(42);
  const records = Array.from({ length: 240 }, () => family.draw(random));
  const result = evaluateRecords(family.layout, records, {
    folds: 3,
    repeats: 1,
    truth: (_, device, findings) => family.posterior(device, findings),
  });

  it('scores every record once per repeat at each cut, and beats naive Bayes and the prior at each', () => {
    expect(result.cuts).toHaveLength(4);
    for (const { results } of result.cuts) {
      const [best, , prior] = results;
      expect(results.map((r) => r.count)).toEqual([240, 240, 240]);
      expect(best?.logLoss).toBeLessThan(prior?.logLoss as number);
      expect(best?.excessLogLoss).toBeGreaterThan(0);
      expect(best?.coverage?.pairs).toBeGreaterThan(240);
    }
    expect(result.byDevice.reduce((sum, group) => sum + group.count, 0)).toBe(240);
  });
});
