import { describe, expect, it } from 'vitest';
import { addRecord, createCounts, retractRecord } from '../../shared/stats/counts';
import { encodeTable } from '../../shared/stats/encode-table';
import { createPlainEstimator } from '../../shared/stats/plain-naive-bayes';
import { CAUSE_COLUMNS, readTable } from '../reference/read-table';

/** Scores every row of a table with that row taken out of the counts. */
function leaveOneOut(name: keyof typeof CAUSE_COLUMNS) {
  const { layout, records } = encodeTable(readTable(name), CAUSE_COLUMNS[name]);
  const counts = createCounts(layout);
  for (const record of records) addRecord(counts, record);
  const estimator = createPlainEstimator(layout, counts);
  const sum = { correct: 0, top3: 0, top5: 0, logLoss: 0, brier: 0, reciprocalRank: 0 };
  for (const record of records) {
    retractRecord(counts, record);
    const p = estimator.probabilities(0, record.findings);
    addRecord(counts, record);
    const truth = record.causes[0] as number;
    const rank = p.filter((other, c) => other > (p[truth] as number) && c !== truth).length + 1;
    if (rank === 1) sum.correct += 1;
    if (rank <= 3) sum.top3 += 1;
    if (rank <= 5) sum.top5 += 1;
    sum.reciprocalRank += 1 / rank / records.length;
    sum.logLoss -= Math.log(p[truth] as number) / records.length;
    p.forEach((q, c) => {
      sum.brier += (q - (c === truth ? 1 : 0)) ** 2 / records.length;
    });
  }
  return sum;
}

// The table: R package mlbench 2.1-3, Soybean (Michalski & Chilausky 1980). Values: two independent implementations
// (R and Python) of add-one naive Bayes by leave-one-out, missing cells skipped, which agree to 1e-15.
describe('createPlainEstimator', () => {
  it('equals the leave-one-out soybean reference to 1e-6', () => {
    const soybean = leaveOneOut('soybean');
    expect(soybean.correct).toBe(636);
    expect(soybean.top3).toBe(672);
    expect(soybean.top5).toBe(683);
    expect(soybean.reciprocalRank).toBeCloseTo(0.956564, 6);
    expect(soybean.logLoss).toBeCloseTo(0.371889, 6);
    expect(soybean.brier).toBeCloseTo(0.125689, 6);
  });

  it('equals the leave-one-out votes and zoo references (same source and recipe)', () => {
    const votes = leaveOneOut('house-votes-84');
    expect(votes.correct).toBe(392);
    expect(votes.logLoss).toBeCloseTo(0.61998, 5);
    const zoo = leaveOneOut('zoo');
    expect(zoo.correct).toBe(95);
    expect(zoo.logLoss).toBeCloseTo(0.125691, 6);
  });
});
