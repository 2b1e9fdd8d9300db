import { describe, expect, it } from 'vitest';
import { blend, fitShares } from '../../shared/stats/blend';
import { flatLayout } from '../../shared/stats/encode-table';
import type { CodedRecord } from '../../shared/stats/layout';
import { fitLogistic, logisticScores } from '../../shared/stats/logistic';
import { minimise } from '../../shared/stats/minimise';
import { tableLearners } from '../../shared/stats/table-learners';
import { fitTemperature, type TableMember } from '../../shared/stats/table-member';

const record = (cause: number, ...values: number[]): CodedRecord => ({
  device: 0,
  causes: [cause],
  proof: 0,
  findings: values.map((value, observable) => ({ observable, value, implied: false, step: 0, stage: 0, proves: false })),
});

const member = (name: string, given: (i: number) => number[], count: number): TableMember => ({
  name,
  predict: () => Float64Array.from(given(0)),
  heldOut: Array.from({ length: count }, (_, i) => Float64Array.from(given(i), Math.log)),
});

describe('minimise', () => {
  // The minimum of Rosenbrock's function (H. H. Rosenbrock, Computer Journal 3 (1960), 175-184) lies at (1, 1).
  it('finds the bottom of the curved valley', () => {
    const found = minimise(
      (point, gradient) => {
        const [x, y] = point as unknown as [number, number];
        gradient[0] = -2 * (1 - x) - 400 * x * (y - x * x);
        gradient[1] = 200 * (y - x * x);
        return (1 - x) ** 2 + 100 * (y - x * x) ** 2;
      },
      Float64Array.of(-1.2, 1),
      { gain: 1e-14 },
    );
    expect(found[0]).toBeCloseTo(1, 4);
    expect(found[1]).toBeCloseTo(1, 4);
  });
});

describe('fitLogistic', () => {
  const layout = flatLayout(2, Uint16Array.of(2));
  // A saturated logistic model reproduces the shares of a two-way table (A. Agresti, Categorical Data Analysis, 2nd ed.
  // 2002, section 5.1): 30 of 40 with value 0, 5 of 20 with value 1.
  const records = [
    ...Array.from({ length: 40 }, (_, i) => record(i < 30 ? 0 : 1, 0)),
    ...Array.from({ length: 20 }, (_, i) => record(i < 5 ? 0 : 1, 1)),
  ];
  const logOdds = (ridge: number, value: number) => {
    const scores = logisticScores(layout, fitLogistic(layout, records, { ridge }), [{ observable: 0, value }]);
    return (scores[0] as number) - (scores[1] as number);
  };

  it('reproduces the shares of a two-way table where nothing holds it back', () => {
    expect(logOdds(1e-6, 0)).toBeCloseTo(Math.log(3), 1);
    expect(logOdds(1e-6, 1)).toBeCloseTo(-Math.log(3), 1);
  });

  it('says less, the stronger the ridge', () => {
    expect(logOdds(30, 0)).toBeLessThan(logOdds(1, 0));
    expect(logOdds(1e7, 0)).toBeCloseTo(0, 3);
  });
});

describe('fitTemperature', () => {
  it('finds the exponent that makes overconfident scores as confident as they are right', () => {
    // Scores claim log odds of 4 and are right in 3 of 4 records: log odds of log 3, so the exponent is log(3) / 4.
    const records = Array.from({ length: 4000 }, (_, i) => record(i % 4 === 0 ? 1 : 0));
    const scores = records.map(() => Float64Array.of(2, -2));
    expect(fitTemperature(scores, records).temperature).toBeCloseTo(Math.log(3) / 4, 2);
  });
});

describe('blend', () => {
  const records = Array.from({ length: 200 }, (_, i) => record(i % 2));
  const good = member('good', (i) => (i % 2 === 0 ? [0.9, 0.1] : [0.1, 0.9]), 200);
  const useless = member('useless', () => [0.5, 0.5], 200);
  const wrong = member('wrong', (i) => (i % 2 === 0 ? [0.1, 0.9] : [0.9, 0.1]), 200);

  it('trusts the member that was right about records it had not seen', () => {
    const [first, second, third] = fitShares(records, [good, useless, wrong]) as [number, number, number];
    expect(first).toBeGreaterThan(0.95);
    expect(second).toBeGreaterThan(0);
    expect(third).toBeGreaterThan(0);
    expect(first + second + third).toBeCloseTo(1, 12);
  });

  it('gives equal members equal weight, and a mean of cautious forecasts more edge', () => {
    expect(fitShares(records, [good, good])[0]).toBeCloseTo(0.5, 9);
    // Both are always right at .9, so the pool may say more than .9.
    const sharper = blend(records, [good, good]).predict([]);
    expect(sharper[0]).toBeGreaterThan(0.93);
    expect((sharper[0] as number) + (sharper[1] as number)).toBeCloseTo(1, 12);
  });
});

describe('tableLearners', () => {
  it('leaves the estimators that count pairs out where there are too many values for them', () => {
    expect(tableLearners(flatLayout(2, Uint16Array.of(2, 2))).map(({ name }) => name)).toContain('shrunken AODE');
    const wide = tableLearners(flatLayout(200, new Uint16Array(500).fill(5)));
    expect(wide.map(({ name }) => name)).toEqual(['weighted naive Bayes', 'naive Bayes', 'prior']);
  });

  it('learns from a handful of records without failing', () => {
    const layout = flatLayout(2, Uint16Array.of(2, 2));
    const few = [record(0, 0, 0), record(1, 1, 1), record(0, 0, 1)];
    for (const { learn } of tableLearners(layout)) {
      const probability = learn(layout, few).probabilities(0, [{ observable: 0, value: 1 }]);
      expect(probability).toHaveLength(3);
      expect(probability.reduce((sum, p) => sum + p, 0)).toBeCloseTo(1, 9);
    }
  });
});
