import { describe, expect, it } from 'vitest';
import { onOneState } from '../../../server/services/on-one-state';
import { addCase, retractCase } from '../../../shared/domain/casebook/casebook-model';
import { buildSnapshot, takeSnapshot } from '../../../shared/domain/snapshot/casebook-snapshot';
import { smallCases } from '../fixtures/small-cases';
import { smallModel } from '../fixtures/small-model';

const cases = smallCases(200);
const DEVICE = 'quellbrook-8-rev-a';

describe('work on one state of the casebook', () => {
  it('is done anew where a case comes or goes between two steps, and then is that of the newest state', async () => {
    const model = smallModel(cases.slice(1));
    let attempts = 0;
    const made = await onOneState(model, function* () {
      attempts += 1;
      const steps = buildSnapshot(model, DEVICE);
      for (let step = 0; step < 2; step += 1) steps.next();
      if (attempts === 1) {
        retractCase(model, cases[5]?.id ?? '');
        addCase(model, cases[0] as (typeof cases)[0]);
      }
      return yield* steps;
    });
    expect(attempts).toBe(2);
    const anew = smallModel(cases.filter((_, at) => at !== 5));
    expect(made).toEqual(takeSnapshot(model, DEVICE));
    expect(made.records).toEqual(takeSnapshot(anew, DEVICE).records);
  });

  it('is done in one go where cases keep changing', async () => {
    const model = smallModel(cases.slice(0, 20));
    let attempts = 0;
    const sizes = await onOneState(model, function* () {
      attempts += 1;
      const before = model.entries.size;
      yield;
      if (attempts <= 3) retractCase(model, cases[attempts]?.id ?? '');
      return [before, model.entries.size];
    });
    expect([attempts, sizes]).toEqual([4, [17, 17]]);
  });
});
