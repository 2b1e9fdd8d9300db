import { describe, expect, it } from 'vitest';
import { countAll } from '../../shared/stats/count-all';
import { flatLayout } from '../../shared/stats/encode-table';
import { evaluateRecords } from '../../shared/stats/evaluate-records';
import type { CodedRecord } from '../../shared/stats/layout';
import { fitRecordDependence } from '../../shared/stats/record-dependence';
import { defaultSettings } from '../../shared/stats/settings';
import { createEstimator } from '../../shared/stats/weighted-naive-bayes';

/** The cause is 1 where the first two symptoms differ: each by itself says nothing. The third says nothing at all. */
const records = Array.from({ length: 96 }, (_, i): CodedRecord => {
  const values = [i & 1, (i >> 1) & 1, (i >> 2) & 1];
  return {
    device: 0,
    causes: [(i & 1) ^ ((i >> 1) & 1)],
    proof: 0,
    findings: values.map((value, observable) => ({ observable, value, implied: false, step: 0, stage: 0, proves: false })),
  };
});
const layout = flatLayout(2, new Uint16Array(3).fill(2));
const pooled = createEstimator(layout, countAll(layout, records), defaultSettings(layout));

describe('dependence-aware estimators on records', () => {
  const contenders = fitRecordDependence(layout, records, pooled);
  const asked = [0, 1].map((observable) => ({ observable, value: 1 }));

  it('see what two findings say together, which naive Bayes cannot', () => {
    expect(contenders.map(({ name }) => name)).toEqual(['shrunken AODE', 'shrunken TAN']);
    for (const { probabilities } of contenders) expect(probabilities(0, asked)[0]).toBeGreaterThan(0.8);
    expect(pooled.probabilities(0, asked)[0]).toBeLessThan(0.6);
  });

  it('give probabilities that sum to 1 with the pooled unlisted share, whatever the order', () => {
    for (const { probabilities } of contenders) {
      const answer = probabilities(0, asked);
      expect(answer.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
      expect(answer.at(-1)).toBeCloseTo(pooled.prior(0).at(-1) as number, 12);
      probabilities(0, asked.toReversed()).forEach((p, cause) => expect(p).toBeCloseTo(answer[cause] as number, 9));
      expect(probabilities(0, []).slice(0, 2).every((p) => p > 0.4)).toBe(true);
    }
  });

  it('stand beside the default in an evaluation, all on the same few records of each part', () => {
    const { cuts } = evaluateRecords(layout, records, { folds: 2, repeats: 1, compareOn: 9 });
    expect(cuts[0]?.results.map(({ estimator, count }) => [estimator, count])).toEqual(
      ['weighted naive Bayes', 'naive Bayes', 'prior', 'shrunken AODE', 'shrunken TAN'].map((name) => [name, 18]),
    );
    const losses = cuts[0]?.results.map(({ logLoss }) => logLoss) ?? [];
    expect(losses[4]).toBeLessThan((losses[0] as number) - 0.2);
  });
});
