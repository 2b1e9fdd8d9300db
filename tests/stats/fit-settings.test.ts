import { describe, expect, it } from 'vitest';
import { createCounts } from '../../shared/stats/counts';
import { serialiseCounts } from '../../shared/stats/counts-serialised';
import { countAll } from '../../shared/stats/evaluate-table';
import { fitSettings } from '../../shared/stats/fit-settings';
import { leaveOneOut } from '../../shared/stats/leave-one-out';
import { createRandom } from '../../shared/stats/random';
import { createScoreBoard } from '../../shared/stats/score-board';
import { defaultSettings, settingsHash } from '../../shared/stats/settings';
import { createEstimator } from '../../shared/stats/weighted-naive-bayes';
import { simulateFamily } from './simulate-family';

const family = simulateFamily({ seed: 31, causes: 12, symptoms: 10, checks: 5, fixes: 2, boards: 4, concentration: 3 });
const random = createRandom(32);
const records = Array.from({ length: 700 }, () => family.draw(random));
const training = records.slice(0, 400);

describe('fitSettings', { timeout: 60_000 }, () => {
  const settings = fitSettings(family.layout, training);

  it('gives the same settings, by hash, for the same records', () => {
    expect(settingsHash(fitSettings(family.layout, training))).toBe(settingsHash(settings));
    expect(settingsHash(fitSettings(family.layout, training.slice(1)))).not.toBe(settingsHash(settings));
  });

  it('never gives a negative exponent, and survives JSON', () => {
    expect(Math.min(...settings.weights)).toBeGreaterThanOrEqual(0);
    expect(settingsHash(JSON.parse(JSON.stringify(settings)))).toBe(settingsHash(settings));
  });

  it('finds exponents near 1 where findings are independent within causes', () => {
    const symptoms = settings.weights.slice(0, 10);
    const mean = symptoms.reduce((a, b) => a + b, 0) / symptoms.length;
    expect(mean).toBeGreaterThan(0.85);
    expect(mean).toBeLessThan(1.15);
  });

  it('predicts units that it has not seen better than the settings it starts from', () => {
    const counts = countAll(family.layout, training);
    const loss = (of: typeof settings) => {
      const estimator = createEstimator(family.layout, counts, of);
      const board = createScoreBoard();
      for (const { device, findings, causes } of records.slice(400)) {
        board.add({ probability: estimator.probabilities(device, findings), target: [{ cause: causes[0] as number, share: 1 }] });
      }
      return board.scores().logLoss;
    };
    expect(loss(settings)).toBeLessThan(loss(defaultSettings(family.layout)));
  });

  it('keeps to the defaults where there is next to nothing to learn from', () => {
    expect(fitSettings(family.layout, training.slice(0, 5))).toEqual(defaultSettings(family.layout));
  });
});

describe('leaveOneOut', () => {
  it('scores as if the record had never been counted, and leaves the counts as they were', () => {
    const few = training.slice(0, 60);
    const counts = countAll(family.layout, few);
    const before = serialiseCounts(counts);
    const settings = defaultSettings(family.layout);
    const held = leaveOneOut(family.layout, { counts, estimator: createEstimator(family.layout, counts, settings), records: few.slice(0, 5) });
    expect(serialiseCounts(counts)).toEqual(before);
    held.forEach(({ columns, logPrior }, i) => {
      const others = countAll(family.layout, few.filter((_, j) => j !== i));
      const alone = createEstimator(family.layout, others, settings);
      const { device, findings } = few[i] as (typeof few)[0];
      alone.evidence(device, findings).forEach(({ logLikelihood }, k) => {
        logLikelihood.forEach((log, c) => {
          expect(columns[k * 13 + c]).toBeCloseTo(log, 5);
        });
      });
      alone.prior(device).forEach((p, c) => {
        if (p > 0) expect(Math.exp(logPrior[c] as number)).toBeCloseTo(p, 6);
      });
    });
  });

  it('scores a cause that only the held-out record has as unlisted', () => {
    const own = { ...(training[0] as (typeof training)[0]), causes: [11] };
    const others = training.slice(1, 50).filter((r) => !r.causes.includes(11));
    const counts = countAll(family.layout, [own, ...others]);
    const estimator = createEstimator(family.layout, counts, defaultSettings(family.layout));
    const [held] = leaveOneOut(family.layout, { counts, estimator, records: [own] });
    expect(held?.target).toEqual([{ cause: 12, share: 1 }]);
    expect(createCounts(family.layout).revision).toBe(0);
  });
});
