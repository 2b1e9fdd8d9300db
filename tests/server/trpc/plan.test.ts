import { describe, expect, it } from 'vitest';
import { planOptionsSchema } from '../../../shared/schemas/plan';
import { smallCases } from '../fixtures/small-cases';
import { memoryCaller } from './test-caller';

const question = { text: 'grey screen, clock present', device: 'quellbrook-8-rev-a' };

describe('plan.make', () => {
  it('raises the chance step by step up to what it says is resolved, and ends in stopping or handing over', async () => {
    const caller = memoryCaller(smallCases(400));
    const plan = await caller.plan.make({ question });
    const chances = plan.steps.flatMap((s) => [s.chanceBefore, s.chanceAfter]);
    expect(chances).toEqual([...chances].sort((a, b) => a - b));
    expect(plan.steps.some((s) => s.kind === 'fix')).toBe(true);
    expect(plan.chanceResolved + plan.end.chanceLeft).toBeCloseTo(1, 9);
    expect(plan.end).toMatchObject({ kind: 'stop-or-hand-over', costCents: 15_000 });
  });

  it('reflows without a step that was struck out, and never cheaper', async () => {
    const caller = memoryCaller(smallCases(400));
    const plan = await caller.plan.make({ question });
    const fix = plan.steps.find((s) => s.kind === 'fix');
    if (!fix) throw new Error('The plan has no fix.');
    const struck = await caller.plan.make({
      question,
      options: planOptionsSchema.parse({ struck: [{ kind: 'fix', id: fix.id }] }),
    });
    expect(struck.steps.map((s) => s.id)).not.toContain(fix.id);
    expect(struck.struck).toEqual([{ kind: 'fix', id: fix.id, label: fix.label }]);
    expect(struck.expectedCostCents).toBeGreaterThanOrEqual(plan.expectedCostCents);
  });

  it('stays below the stage and with the instruments that the user has', async () => {
    const caller = memoryCaller(smallCases(400));
    const noSolder = await caller.plan.make({ question, options: planOptionsSchema.parse({ maxStage: 2 }) });
    expect(Math.max(0, ...noSolder.steps.map((s) => s.stage))).toBeLessThanOrEqual(2);
    const noScope = await caller.plan.make({
      question,
      options: planOptionsSchema.parse({ instruments: ['multimeter', 'soldering-iron'] }),
    });
    expect(noScope.steps.map((s) => s.id)).not.toContain('video-output-pin');
  });

  it('does not offer a fix that was tried already', async () => {
    const caller = memoryCaller(smallCases(400));
    const set = [{ kind: 'fix' as const, id: 'replace-video-generator', value: 'no-change' as const }];
    const plan = await caller.plan.make({ question: { ...question, set } });
    expect(plan.steps.map((s) => s.id)).not.toContain('replace-video-generator');
  });
});
