import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addRecord, COUNT_UNIT, createCounts, retractRecord } from '../../shared/stats/counts';
import { deserialiseCounts, serialiseCounts } from '../../shared/stats/counts-serialised';
import type { CodedRecord } from '../../shared/stats/layout';
import { defaultSettings } from '../../shared/stats/settings';
import { createEstimator } from '../../shared/stats/weighted-naive-bayes';
import { arbitraryRecord } from './arbitrary-record';
import { recorded, recordOf, smallLayout } from './small-world';

const layout = smallLayout();
const rebuilt = (records: readonly CodedRecord[]) => {
  const counts = createCounts(layout);
  for (const record of records) addRecord(counts, record);
  return counts;
};

describe('retractRecord', () => {
  it('leaves what a rebuild would, bit for bit, after any sequence of adds and retracts', () => {
    const sequence = fc.array(fc.record({ record: arbitraryRecord, drop: fc.boolean(), pick: fc.nat() }), { maxLength: 40 });
    fc.assert(
      fc.property(sequence, (steps) => {
        const counts = createCounts(layout);
        const kept: CodedRecord[] = [];
        for (const { record, drop, pick } of steps) {
          addRecord(counts, record);
          kept.push(record);
          if (drop) retractRecord(counts, kept.splice(pick % kept.length, 1)[0] as CodedRecord);
        }
        const fresh = rebuilt([...kept].reverse());
        expect(serialiseCounts(counts)).toEqual(serialiseCounts(fresh));
        const settings = defaultSettings(layout);
        const findings = [recorded(0, 1), recorded(3, 1)];
        const changed = createEstimator(layout, counts, settings).probabilities(4, findings);
        createEstimator(layout, fresh, settings).probabilities(4, findings).forEach((p, c) => {
          expect(Math.abs(p - (changed[c] as number))).toBeLessThan(1e-9);
        });
      }),
      { numRuns: 150 },
    );
  });

  it('refuses a record that was never counted', () => {
    const counts = rebuilt([recordOf(4, [1], [recorded(0, 1)])]);
    expect(() => retractRecord(counts, recordOf(4, [0], []))).toThrow(RangeError);
    expect(() => retractRecord(counts, recordOf(4, [], []))).toThrow(RangeError);
  });
});

describe('addRecord', () => {
  it('splits a record of three causes and proof weight 0.8 exactly', () => {
    const counts = rebuilt([recordOf(4, [0, 1, 2], [recorded(0, 1)], 2)]);
    expect([...counts.causeWeights.slice(0, 4)]).toEqual([160, 160, 160, 0]);
    expect(counts.resolvedWeights[0]).toBe(0.8 * COUNT_UNIT);
  });

  it('counts the same finding twice once', () => {
    const once = rebuilt([recordOf(4, [0], [recorded(0, 1)])]);
    const twice = rebuilt([recordOf(4, [0], [recorded(0, 1), recorded(0, 1)])]);
    expect(serialiseCounts(twice)).toEqual(serialiseCounts(once));
  });

  it('counts nothing of a record that does not fit', () => {
    const counts = createCounts(layout);
    expect(() => addRecord(counts, recordOf(4, [7], []))).toThrow(RangeError);
    expect(() => addRecord(counts, recordOf(4, [0], [recorded(3, 3)]))).toThrow(RangeError);
    expect(() => addRecord(counts, recordOf(44, [0], []))).toThrow(RangeError);
    expect(serialiseCounts(counts)).toEqual(serialiseCounts(createCounts(layout)));
  });
});

describe('deserialiseCounts', () => {
  it('gives back what was serialised, through JSON', () => {
    const counts = rebuilt([recordOf(4, [0], [recorded(0, 1)]), recordOf(5, [], [recorded(1, 1)])]);
    const read = deserialiseCounts(layout, JSON.parse(JSON.stringify(serialiseCounts(counts))));
    expect(serialiseCounts(read)).toEqual(serialiseCounts(counts));
  });

  it('refuses another version and another vocabulary', () => {
    const form = serialiseCounts(createCounts(layout));
    expect(() => deserialiseCounts(layout, { ...form, version: 99 })).toThrow(/version 99/);
    expect(() => deserialiseCounts(layout, { ...form, shape: { ...form.shape, causes: 5 } })).toThrow(/Rebuild/);
  });
});
