import { describe, expect, it } from 'vitest';
import { addRecord } from '../../shared/stats/counts';
import { serialiseCounts } from '../../shared/stats/counts-serialised';
import { countAll } from '../../shared/stats/evaluate-table';
import { influence, surprise } from '../../shared/stats/influence';
import { defaultSettings } from '../../shared/stats/settings';
import { createEstimator } from '../../shared/stats/weighted-naive-bayes';
import { recorded, recordOf, smallLayout } from './small-world';

const layout = smallLayout();
const settings = defaultSettings(layout);
const casebook = [
  ...Array.from({ length: 20 }, () => recordOf(4, [0], [recorded(0, 1), recorded(1, 0)])),
  ...Array.from({ length: 20 }, () => recordOf(4, [1], [recorded(0, 0), recorded(1, 1)])),
];
const queries = [{ device: 4, findings: [recorded(0, 1)] }, { device: 9, findings: [] }];

describe('influence', () => {
  it('is the difference that accepting the record makes, and leaves the counts as they were', () => {
    const counts = countAll(layout, casebook);
    const before = serialiseCounts(counts);
    const record = recordOf(4, [1], [recorded(0, 1)]);
    const shifts = influence(counts, createEstimator(layout, counts, settings), { record, queries });
    expect(serialiseCounts(counts)).toEqual(before);
    addRecord(counts, record);
    const accepted = createEstimator(layout, counts, settings);
    for (const { cause, after } of shifts[0] ?? []) {
      expect(after).toBe(accepted.probabilities(4, queries[0]?.findings ?? [])[cause]);
    }
    expect(shifts[0]?.some(({ cause, before: p, after }) => cause === 1 && after > p)).toBe(true);
    const sizes = shifts[0]?.map((s) => Math.abs(s.after - s.before)) ?? [];
    expect(sizes).toEqual([...sizes].sort((a, b) => b - a));
  });

  it('leaves what an estimator has computed good, also where the record is the first with its cause', () => {
    const counts = countAll(layout, casebook);
    const kept = createEstimator(layout, counts, settings);
    const { table } = kept.outcomeTable(4, 1);
    for (const cause of [1, 2]) influence(counts, kept, { record: recordOf(4, [cause], [recorded(0, 1), recorded(1, 1)]), queries });
    expect(kept.outcomeTable(4, 1).table).toBe(table);
    const anew = createEstimator(layout, counts, settings);
    for (const { device, findings } of queries) expect(kept.posterior(device, findings)).toEqual(anew.posterior(device, findings));
    addRecord(counts, recordOf(4, [1], [recorded(1, 1)]));
    expect(kept.outcomeTable(4, 1).table).not.toBe(table);
    expect(kept.posterior(4, [])).toEqual(createEstimator(layout, counts, settings).posterior(4, []));
  });

  it('leaves the counts as they were where the record does not fit', () => {
    const counts = countAll(layout, casebook);
    const before = serialiseCounts(counts);
    expect(() => influence(counts, createEstimator(layout, counts, settings), { record: recordOf(4, [9], []), queries })).toThrow(RangeError);
    expect(serialiseCounts(counts)).toEqual(before);
  });
});

describe('surprise', () => {
  const counts = countAll(layout, casebook);

  it('is high where the findings speak for another cause, low where they fit', () => {
    const fits = surprise(createEstimator(layout, counts, settings), recordOf(4, [0], [recorded(0, 1), recorded(1, 0)]));
    const odd = surprise(createEstimator(layout, counts, settings), recordOf(4, [0], [recorded(0, 0), recorded(1, 1)]));
    expect(fits?.bits).toBeLessThan(0);
    expect(odd?.bits).toBeGreaterThan(3);
    expect(odd?.causeProbability).toBeLessThan(0.1);
    expect(odd?.findings[0]?.bits).toBeGreaterThan(odd?.findings[0]?.usualBits as number);
  });

  it('says nothing of a record whose cause was not found', () => {
    expect(surprise(createEstimator(layout, counts, settings), recordOf(4, [], [recorded(0, 1)]))).toBeNull();
  });
});
