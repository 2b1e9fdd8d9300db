import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addRecord, createCounts } from '../../shared/stats/counts';
import type { CodedFinding } from '../../shared/stats/layout';
import { defaultSettings } from '../../shared/stats/settings';
import { shareInState } from '../../shared/stats/state-shares';
import { unitState } from '../../shared/stats/unit-state';
import { createEstimator } from '../../shared/stats/weighted-naive-bayes';
import { arbitraryRecord } from './arbitrary-record';
import { BOARDS, recorded, recordOf, smallLayout } from './small-world';

const layout = smallLayout();
const dead: CodedFinding = { observable: 2, value: 1 };
const notDead: CodedFinding = { observable: 2, value: 0 };
const dark: CodedFinding = { observable: 1, value: 1 };

describe('unitState', () => {
  it('is the highest state that a present symptom shows', () => {
    expect(unitState(layout, [dark])).toBe(1);
    expect(unitState(layout, [dead])).toBe(2);
    expect(unitState(layout, [dead, dark])).toBe(2);
    expect(unitState(layout, [dark, notDead])).toBe(1);
  });

  it('is none of them only where the highest is denied, and unknown otherwise', () => {
    expect(unitState(layout, [notDead])).toBe(0);
    expect(unitState(layout, [{ observable: 1, value: 0 }])).toBe(-1);
    expect(unitState(layout, [{ observable: 3, value: 1 }])).toBe(-1);
    expect(unitState({ ...layout, showsState: undefined }, [dead])).toBe(-1);
  });

  it('does not depend on the order of findings', () => {
    fc.assert(
      fc.property(arbitraryRecord, ({ findings }) => {
        expect(unitState(layout, [...findings].reverse())).toBe(unitState(layout, findings));
      }),
    );
  });
});

describe('shareInState', () => {
  const settings = { onTarget: 10, offTarget: 10, lean: 10 };

  it('gives the share over all states where nothing was counted in the state and nothing is leant on', () => {
    const counted = { own: 0, ownTotal: 0, off: 0, offTotal: 0 };
    expect(shareInState({ share: 0.3, worth: 5 }, counted, { on: true, offShare: 0.9, settings }).share).toBeCloseTo(0.3, 12);
  });

  it('follows the worked example of three weighted means, one on the other', () => {
    // All causes in the state (9 + 6 * .5) / (14 + 6) = .6; the cause (10 * .2 + 10 * .6) / 20 = .4; with its own
    // records (4 + 10 * .4) / (6 + 10) = .5.
    const counted = { own: 4, ownTotal: 6, off: 9, offTotal: 14 };
    const { share, worth } = shareInState({ share: 0.2, worth: 10 }, counted, { on: false, offShare: 0.5, settings });
    expect(share).toBeCloseTo(0.5, 12);
    expect(worth).toBeCloseTo(6 + 1 / (1 / 10 + 1 / 20), 12);
  });
});

describe('what a check shows in a state', () => {
  /** Units of causes 1 and 2 show value 1 at check 3 when dead and value 0 when not; cause 3 was never seen dead. */
  const learned = () => {
    const counts = createCounts(layout);
    for (let i = 0; i < 20; i += 1) {
      for (const cause of [1, 2]) {
        addRecord(counts, recordOf(BOARDS[0], [cause], [recorded(2, 1), recorded(3, 1)]));
        addRecord(counts, recordOf(BOARDS[0], [cause], [recorded(2, 0), recorded(3, 0)]));
      }
      if (i < 3) addRecord(counts, recordOf(BOARDS[0], [3], [recorded(2, 0), recorded(3, 0)]));
    }
    return createEstimator(layout, counts, defaultSettings(layout));
  };
  const showsOne = (findings: CodedFinding[], cause: number) => learned().outcomeTable(BOARDS[0], 3, findings).table[cause * 3 + 1] as number;

  it('is what units in that state showed', () => {
    expect(showsOne([dead], 1)).toBeGreaterThan(0.8);
    expect(showsOne([notDead], 1)).toBeLessThan(0.2);
    expect(showsOne([], 1)).toBeGreaterThan(0.4);
    expect(showsOne([], 1)).toBeLessThan(0.6);
  });

  it('is borrowed from other causes where a cause was never seen in that state', () => {
    expect(showsOne([dead], 3)).toBeGreaterThan(3 * showsOne([notDead], 3));
  });

  it('is scored by a finding as by the table, and rows stay distributions', () => {
    const estimator = learned();
    const { table, weight } = estimator.outcomeTable(BOARDS[0], 3, [dead]);
    const [, check] = estimator.evidence(BOARDS[0], [dead, { observable: 3, value: 1 }]);
    for (let c = 0; c <= 4; c += 1) {
      expect(table.slice(c * 3, c * 3 + 3).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
      expect(check?.logLikelihood[c]).toBeCloseTo(Math.log(table[c * 3 + 1] as number), 12);
      expect(check?.weight).toBe(weight);
    }
  });
});
