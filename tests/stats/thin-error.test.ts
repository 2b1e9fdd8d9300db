import { describe, expect, it } from 'vitest';
import { addRecord, createCounts } from '../../shared/stats/counts';
import { CHECK } from '../../shared/stats/layout';
import { defaultSettings } from '../../shared/stats/settings';
import { thinError } from '../../shared/stats/thin-error';
import { createEstimator } from '../../shared/stats/weighted-naive-bayes';
import { BOARDS, recorded, recordOf, smallLayout } from './small-world';

const layout = smallLayout();
const modelError = { constant: 0, perFinding: 0, thinDevice: 0.3, thinCasebook: 0.7 };
const symptom = { observable: 0, value: 1 };
const check = { observable: layout.kinds.indexOf(CHECK), value: 0 };

function counted(records: number) {
  const counts = createCounts(layout);
  for (let i = 0; i < records; i += 1) addRecord(counts, recordOf(BOARDS[0], [i % 2], [recorded(0, 1)]));
  return counts;
}

describe('thinError', () => {
  it('adds what the device and what the casebook lack, more with each check', () => {
    const counts = counted(50);
    // Two causes in 50 records, all on this board: 0.3 * 50 / 100 + 0.7 * 2 / 50 = 0.178; three checks' worth doubles it.
    expect(thinError(counts, { device: BOARDS[0], findings: [symptom], modelError })).toBeCloseTo(0.178, 12);
    expect(thinError(counts, { device: BOARDS[0], findings: [symptom, check], modelError })).toBeCloseTo((0.178 * 4) / 3, 12);
    // A board without records: 0.3 + 0.028.
    expect(thinError(counts, { device: BOARDS[1], findings: [symptom], modelError })).toBeCloseTo(0.328, 12);
  });

  it('is nought before anything is known and where there are no records', () => {
    expect(thinError(counted(50), { device: BOARDS[0], findings: [], modelError })).toBe(0);
    expect(thinError(createCounts(layout), { device: BOARDS[0], findings: [symptom], modelError })).toBe(0);
  });

  it('widens the intervals and leaves the estimates alone', () => {
    const settings = defaultSettings(layout);
    const answer = (thin: typeof modelError) => createEstimator(layout, counted(50), { ...settings, modelError: thin }).posterior(BOARDS[0], [symptom]);
    const [wide, narrow] = [answer(modelError), answer({ ...modelError, thinDevice: 0, thinCasebook: 0 })];
    expect(wide.probability).toEqual(narrow.probability);
    expect(wide.low[0]).toBeLessThan(narrow.low[0] as number);
    expect(wide.high[0]).toBeGreaterThan(narrow.high[0] as number);
  });
});
