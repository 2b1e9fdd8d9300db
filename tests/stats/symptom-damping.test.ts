import { describe, expect, it } from 'vitest';
import { countAll } from '../../shared/stats/count-all';
import { fitDamping } from '../../shared/stats/fit-damping';
import { CHECK } from '../../shared/stats/layout';
import type { HeldOut } from '../../shared/stats/leave-one-out';
import { defaultSettings } from '../../shared/stats/settings';
import { presentSymptoms, symptomFactor } from '../../shared/stats/symptom-damping';
import { createEstimator } from '../../shared/stats/weighted-naive-bayes';
import { BOARDS, recorded, recordOf, smallLayout } from './small-world';

const layout = smallLayout();
const check = layout.kinds.indexOf(CHECK);

/**
 * A hundred records that tell of one symptom and a hundred that tell of two, each four times as likely under cause 0. Where the
 * second only repeats the first, 80 of 100 have cause 0 whatever is told; where it is news, 16 in 17 of those with two.
 */
function heldOut(repeats: boolean): HeldOut[] {
  const row = [Math.log(0.8), Math.log(0.2), Math.log(0.4)];
  return [1, 2].flatMap((present) =>
    Array.from({ length: 100 }, (_, i): HeldOut => {
      const share = present === 1 || repeats ? 0.8 : 16 / 17;
      return {
        observables: Int32Array.from({ length: present }, (_, o) => o),
        columns: Float32Array.from(present === 1 ? row : [...row, ...row]),
        logPrior: Float32Array.of(0, 0, -20),
        present,
        target: [{ cause: i < 100 * share ? 0 : 1, share: 1 }],
        cuts: [present],
      };
    }),
  );
}

describe('symptoms that come together', () => {
  it('count less each, by a power of how many are present, and checks count as before', () => {
    expect(symptomFactor(1, 0.5)).toBe(1);
    expect(symptomFactor(0, 0.5)).toBe(1);
    expect(symptomFactor(4, 0.5)).toBe(0.5);
    const settings = { ...defaultSettings(layout), symptomDamping: 0.5 };
    const estimator = createEstimator(layout, countAll(layout, [recordOf(BOARDS[0], [0], [recorded(0, 1)])]), settings);
    const present = [0, 1].map((observable) => ({ observable, value: 1 }));
    expect(presentSymptoms(layout, present)).toBe(2);
    const weights = (findings: typeof present) => estimator.evidence(BOARDS[0], findings).map(({ weight }) => weight);
    expect(weights([present[0]!])).toEqual([0.8]);
    const [first, again, checked] = weights([present[0]!, present[1]!, { observable: check, value: 0 }, present[0]!]);
    expect([first, again]).toEqual([0.8 / Math.SQRT2, 0.8 / Math.SQRT2]);
    expect(checked).toBe(0.8);
  });

  it('are damped by the fit where they repeat each other, and not where they do not', () => {
    const [repeated, news] = [fitDamping(layout, heldOut(true)), fitDamping(layout, heldOut(false))];
    // Two that say the same deserve half each, and 2 to the power of -1 is a half: the strongest that is tried.
    expect(repeated.damping).toBe(0.5);
    expect(repeated.heldOut[150]?.columns[0]).toBeCloseTo(Math.log(0.8) / Math.SQRT2, 6);
    expect(repeated.heldOut[50]?.columns[0]).toBeCloseTo(Math.log(0.8), 6);
    expect(news.damping).toBe(0);
  });
});
