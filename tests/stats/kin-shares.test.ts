import { describe, expect, it } from 'vitest';
import { addRecord, createCounts } from '../../shared/stats/counts';
import { createKinCounts, leanOnKin } from '../../shared/stats/kin-shares';
import { defaultSettings } from '../../shared/stats/settings';
import { createEstimator } from '../../shared/stats/weighted-naive-bayes';
import { BOARDS, recorded, recordOf, smallLayout } from './small-world';

describe('leanOnKin', () => {
  it('counts what kin showed, limited to what kin are worth, against the pull of what is known', () => {
    // 30 of 40 kin records limited to a worth of 40: half of each counts. (15 + 5 * .1) / (20 + 5) = .62
    expect(leanOnKin(0.1, [{ records: 30, total: 40 }], { worth: [40], pull: 5 })).toBeCloseTo(0.62, 12);
  });

  it('changes nothing where kin showed nothing', () => {
    expect(leanOnKin(0.1, [{ records: 0, total: 0 }], { worth: [40], pull: 5 })).toBeCloseTo(0.1, 12);
  });
});

describe('kin of a cause', () => {
  /** Causes 0 and 1 are kin in the small layout, 2 and 3 stand alone; cause 0 showed symptom 0 in all of its 30 records. */
  const learned = (withKin: boolean) => {
    const { kin, ...rest } = smallLayout();
    const layout = withKin ? { ...rest, kin: kin ?? [] } : rest;
    const counts = createCounts(layout);
    for (let i = 0; i < 30; i += 1) {
      addRecord(counts, recordOf(BOARDS[0], [0], [recorded(0, 1)]));
      for (const cause of [2, 3]) addRecord(counts, recordOf(BOARDS[0], [cause], [recorded(0, 0)]));
    }
    addRecord(counts, recordOf(BOARDS[0], [1], [recorded(1, 0)]));
    return { counts, estimator: createEstimator(layout, counts, defaultSettings(layout)) };
  };

  it('lends its shares to a cause of which nothing is known, and to no other', () => {
    const shown = (withKin: boolean) => learned(withKin).estimator.outcomeTable(BOARDS[0], 0).table;
    expect(shown(true)[1 * 2 + 1]).toBeGreaterThan(1.3 * (shown(false)[1 * 2 + 1] as number));
    expect(shown(true)[2 * 2 + 1]).toBeCloseTo(shown(false)[2 * 2 + 1] as number, 12);
  });

  it('is counted without the cause itself', () => {
    const { counts } = learned(true);
    expect(createKinCounts(counts)(0)?.of(0, 1)).toEqual([{ records: 0, total: 0 }, { records: 0, total: 0 }]);
    expect(createKinCounts(counts)(0)?.of(1, 1)?.[0]).toEqual({ records: 30, total: 30 });
    expect(createKinCounts(counts)(0)?.of(3, 1)).toBeNull();
  });
});
