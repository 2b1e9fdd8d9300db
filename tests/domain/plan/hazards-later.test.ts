import { describe, expect, it } from 'vitest';
import { nextMoveHazardsLater, planHazardsLater } from '../../../shared/domain/plan/hazards-later';
import type { PlanProblem } from '../../../shared/stats/decide/plan-problem';
import { repairPlan } from '../../../shared/stats/decide/repair-plan';
import { createRandom } from '../../../shared/stats/random';
import { randomProblem, randomSmallSize } from '../../stats/decide/random-problem';

/** Two causes of 60 and 40 in 100, a sure fix for each at the same cost: the likelier comes first unless it is hazardous. */
const problem: PlanProblem = {
  posterior: Float64Array.of(0.6, 0.4, 0),
  fixes: [
    { cure: Float64Array.of(1, 0, 0), minutes: 30, partCost: 10, stage: 3 },
    { cure: Float64Array.of(0, 1, 0), minutes: 30, partCost: 10, stage: 3 },
  ],
  checks: [],
  hourValue: 20,
  handOverCost: 100,
};
const order = (plan: ReturnType<typeof repairPlan>) => plan.steps.map((step) => step.index);

describe('planHazardsLater', () => {
  it('leaves a plan alone that begins with safe work', () => {
    expect(planHazardsLater(problem, () => false)).toEqual(repairPlan(problem));
    expect(order(planHazardsLater(problem, (step) => step.index === 1))).toEqual([0, 1]);
  });

  it('puts a safer step that pays before hazardous work, and counts no extra price', () => {
    const plan = planHazardsLater(problem, (step) => step.index === 0);
    expect(order(plan)).toEqual([1, 0]);
    // Each step costs 30 minutes at 20 an hour and 10 for the part: 20. The second is needed in 60 of 100.
    expect(plan.expectedCost).toBeCloseTo(20 + 0.6 * 20, 9);
    expect(plan.expectedPartCost).toBeCloseTo(10 + 0.6 * 10, 9);
    expect(plan.steps.map((s) => [s.partCost, s.expectedPartCostSoFar])).toEqual([
      [10, expect.closeTo(10, 9)],
      [10, expect.closeTo(16, 9)],
    ]);
  });

  it('promises what the whole plan resolves, hazardous work behind the safer step included', () => {
    // The safer fix is worth its 3 only where the other costs more than handing over: the plan still goes on with that one, at its true 20.
    const rarely = { ...problem.fixes[1]!, minutes: 9, partCost: 0 };
    const plan = planHazardsLater(
      { ...problem, posterior: Float64Array.of(0.95, 0.05, 0), fixes: [problem.fixes[0]!, rarely] },
      ({ index }) => index === 0,
    );
    expect(order(plan)).toEqual([1, 0]);
    expect(plan.chanceResolved).toBeCloseTo(1, 9);
    expect(plan.expectedCost).toBeCloseTo(3 + 0.95 * 20, 9);
    expect(plan.steps.map(({ reason }) => reason)).toEqual(['begins', 'most-chance-for-its-cost']);
  });

  it('begins with hazardous work where nothing safer is open', () => {
    expect(order(planHazardsLater(problem, () => true))).toEqual([0, 1]);
  });

  it('gives its first step alone, too, on problems with every sort of step', () => {
    let later = 0;
    for (let seed = 1; seed <= 60; seed += 1) {
      const random = createRandom(seed);
      const drawn = randomProblem(random, randomSmallSize(random));
      const isHazardous = ({ kind, index }: { kind: string; index: number }) =>
        kind === 'check' ? index % 2 === 1 : index % 3 === 0;
      const step = planHazardsLater({ ...drawn, effort: 400 }, isHazardous).steps[0];
      const move = nextMoveHazardsLater({ ...drawn, effort: 400 }, isHazardous);
      expect(move).toEqual(step === undefined ? { kind: 'hand-over' } : { kind: step.kind, index: step.index });
      const first = repairPlan({ ...drawn, effort: 400 }).steps[0];
      if (first !== undefined && (first.kind !== step?.kind || first.index !== step.index)) later += 1;
    }
    expect(later).toBeGreaterThan(5);
  });
});
