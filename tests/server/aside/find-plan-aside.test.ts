import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { endPlanThread, findPlanAside } from '../../../server/aside/find-plan-aside';
import { buildPlanWorker } from '../../../server/start/build-plan-worker.mjs';
import { planRepair, preparePlan } from '../../../shared/domain/plan/plan-repair';
import { planOptionsSchema } from '../../../shared/schemas/plan';
import { questionSchema } from '../../../shared/schemas/question';
import { takeConsoleErrors } from '../../setup/take-console-errors';
import { smallCases } from '../fixtures/small-cases';
import { smallModel } from '../fixtures/small-model';

const folder = mkdtempSync(join(tmpdir(), 'plan-worker-'));
const built = join(folder, 'plan-worker.mjs');
const question = questionSchema.parse({ text: 'grey screen' });
const options = planOptionsSchema.parse({});
const model = smallModel(smallCases(200));

beforeAll(() => buildPlanWorker(built));
afterEach(endPlanThread);
afterAll(() => rmSync(folder, { recursive: true }));

describe('a plan searched for in a thread of its own', () => {
  it('is the plan that is found without it, for each of several asked for at once', async () => {
    const asked = ['grey screen', 'garbled', ''].map((text) => questionSchema.parse({ text }));
    const plans = await Promise.all(
      asked.map(async (each) => {
        const { task, inWords } = preparePlan(model, each, options);
        return inWords(await findPlanAside(task, built));
      }),
    );
    expect(plans).toEqual(asked.map((each) => planRepair(model, each, options)));
  });

  it('leaves this thread free meanwhile', async () => {
    const { task } = preparePlan(model, question, options);
    let turns = 0;
    const turning = setInterval(() => (turns += 1), 1);
    // The start of the thread alone takes several turns.
    await findPlanAside(task, built);
    clearInterval(turning);
    expect(turns).toBeGreaterThan(2);
  });

  it('is made here where there is no thread, or the thread fails', async () => {
    const { task } = preparePlan(model, question, options);
    const plain = await findPlanAside(task, join(folder, 'missing.mjs'));
    const broken = join(folder, 'broken.mjs');
    writeFileSync(broken, 'throw new Error("no room");');
    expect(await findPlanAside(task, broken)).toEqual(plain);
    expect(takeConsoleErrors().join()).toContain('this plan is made without it');
    expect((await findPlanAside(task, built)).steps).toEqual(plain.steps);
  });
});
