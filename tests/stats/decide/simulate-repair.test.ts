import { describe, expect, it, vi } from 'vitest';
import { posteriorAfter } from '../../../shared/stats/decide/check-model';
import type { PlanProblem } from '../../../shared/stats/decide/plan-problem';
import { cheapestFirst, type HabitInput, inFixedOrder, mostCommonFirst, mostLikelyFirst } from '../../../shared/stats/decide/repair-habits';
import { type PlanMove, repairPlan } from '../../../shared/stats/decide/repair-plan';
import { followPlan, followSuggestions } from '../../../shared/stats/decide/repair-policies';
import {
  type BenchState,
  type RepairPolicy,
  simulateRepair,
  type UnitAnswers,
} from '../../../shared/stats/decide/simulate-repair';
import { createRandom } from '../../../shared/stats/random';
import { randomProblem } from './random-problem';

// Exact sums and many random cases: some seconds alone, more on a busy machine.
vi.setConfig({ testTimeout: 120_000 });

/** Beliefs from the problem's start and from the steps taken. */
function beliefIn(problem: PlanProblem): (state: BenchState) => Float64Array {
  return ({ steps }) =>
    steps.reduce((belief, { kind, index, value }) => {
      if (kind === 'check') return posteriorAfter(belief, problem.checks[index]!, value);
      const failure = problem.fixes[index]!.cure.map((cure) => 1 - cure);
      return posteriorAfter(belief, { table: failure, values: 1, weight: 1 }, 0);
    }, problem.posterior);
}

/** Draws an index with these chances. */
function draw(random: () => number, chances: ArrayLike<number>): number {
  let left = random();
  for (let index = 0; index < chances.length; index++) {
    left -= chances[index]!;
    if (left < 0) return index;
  }
  return chances.length - 1;
}

/** A unit whose answers are drawn from the problem's own tables. */
function drawUnit(random: () => number, problem: PlanProblem): UnitAnswers {
  const cause = draw(random, problem.posterior);
  return {
    check: (index) => {
      const { table, values } = problem.checks[index]!;
      return draw(random, table.slice(cause * values, (cause + 1) * values));
    },
    fix: (index) => {
      const cured = random() < problem.fixes[index]!.cure[cause]!;
      return { cured, value: cured ? 3 : 0 };
    },
  };
}

const habitInput = (problem: PlanProblem): HabitInput => ({ ...problem, prior: problem.posterior, belief: beliefIn(problem) });

/** Follows the plan; what was decided once for the same steps is kept, for speed. */
function planPolicy(problem: PlanProblem): RepairPolicy {
  const follow = followPlan((state) => ({ ...problem, posterior: beliefIn(problem)(state) }));
  const decided = new Map<string, PlanMove>();
  return (state) => {
    const key = JSON.stringify(state.steps);
    const move = decided.get(key) ?? follow(state);
    decided.set(key, move);
    return move;
  };
}

/** Mean cost over the same units for each policy. */
function meanCost(problem: PlanProblem, policy: RepairPolicy, units: number, seed: number): number {
  const random = createRandom(seed);
  let sum = 0;
  for (let unit = 0; unit < units; unit++) sum += simulateRepair(drawUnit(random, problem), policy, problem).cost;
  return sum / units;
}

const fix = (cure: number[], minutes: number, partCost: number) => ({
  cure: Float64Array.of(...cure),
  minutes,
  partCost,
  stage: 1,
});

/** Cause 0 common and dear to fix, cause 1 rarer and cheap, cause 2 unlisted. */
const bench: PlanProblem = {
  posterior: Float64Array.of(0.5, 0.4, 0.1),
  fixes: [fix([1, 0, 0], 30, 20), fix([0, 1, 0], 10, 0)],
  checks: [],
  hourValue: 60,
  handOverCost: 200,
};

const unitWith = (cause: number): UnitAnswers => ({
  check: () => 0,
  fix: (index) => ({ cured: bench.fixes[index]!.cure[cause] === 1, value: 0 }),
});

describe('simulateRepair', () => {
  it('adds up minutes, parts and the hand-over (derivable: 10 min and 30 min at one a minute, 20 of parts, 200)', () => {
    const policy = mostLikelyFirst(habitInput(bench));
    expect(simulateRepair(unitWith(0), policy, bench)).toMatchObject({ cured: true, minutes: 30, partCost: 20, cost: 50 });
    expect(simulateRepair(unitWith(1), policy, bench)).toMatchObject({ cured: true, minutes: 40, partCost: 20, cost: 60 });
    const lost = simulateRepair(unitWith(2), policy, bench);
    expect(lost).toMatchObject({ cured: false, minutes: 40, partCost: 20, cost: 260 });
    expect(lost.steps).toHaveLength(2);
  });

  it('hands over once the spending cap is reached', () => {
    const run = simulateRepair(unitWith(1), mostLikelyFirst(habitInput(bench)), { ...bench, spendingCap: 45 });
    expect(run).toMatchObject({ cured: false, cost: 250 });
    expect(run.steps).toHaveLength(1);
  });

  it('refuses a policy that repeats a step, or invents one', () => {
    expect(() => simulateRepair(unitWith(2), () => ({ kind: 'fix', index: 0 }), bench)).toThrow(/repeats fix 0/);
    expect(() => simulateRepair(unitWith(2), () => ({ kind: 'check', index: 4 }), bench)).toThrow(/no check 4/);
  });

  it('costs on average what the plan expected, over 4,000 units drawn from its own tables', () => {
    const problem = randomProblem(createRandom(31), { causes: 6, fixes: 4, checks: 3, weighted: false });
    const expected = repairPlan(problem).expectedCost;
    const random = createRandom(32);
    const policy = planPolicy(problem);
    const runs = Array.from({ length: 4000 }, () => simulateRepair(drawUnit(random, problem), policy, problem).cost);
    const mean = runs.reduce((a, b) => a + b, 0) / runs.length;
    const deviation = Math.sqrt(runs.reduce((sum, cost) => sum + (cost - mean) ** 2, 0) / runs.length);
    expect(Math.abs(mean - expected)).toBeLessThan((4 * deviation) / Math.sqrt(runs.length));
  });
});

describe('habits', () => {
  it('go by the commonest, the cheapest and the most likely cause', () => {
    const state: BenchState = { steps: [], triedFixes: [], doneChecks: [], minutes: 0, partCost: 0 };
    const input = { ...habitInput(bench), prior: Float64Array.of(0.2, 0.7, 0.1) };
    expect(mostCommonFirst(input)(state)).toEqual({ kind: 'fix', index: 1 });
    expect(cheapestFirst(input)(state)).toEqual({ kind: 'fix', index: 1 });
    expect(mostLikelyFirst(input)(state)).toEqual({ kind: 'fix', index: 0 });
    expect(mostCommonFirst(habitInput(bench))(state)).toEqual({ kind: 'fix', index: 0 });
  });

  it('learn from failures: after the fix for the likeliest cause failed, the next cause is tried, then the unit handed over', () => {
    for (const habit of [mostCommonFirst, cheapestFirst, mostLikelyFirst]) {
      const run = simulateRepair(unitWith(2), habit(habitInput(bench)), bench);
      expect(run.steps.map(({ index }) => index).sort()).toEqual([0, 1]);
      expect(run.cured).toBe(false);
    }
  });

  it('without a look-up go down a list that failures do not change, and stop once as much is spent as handing over costs', () => {
    const input = { ...habitInput(bench), belief: Float64Array.of(0.2, 0.7, 0.1) };
    const tried = (handOverCost: number) =>
      simulateRepair(unitWith(2), inFixedOrder({ ...input, handOverCost }, ({ commonest }) => commonest), bench).steps.map(({ index }) => index);
    expect(tried(1000)).toEqual([1, 0]);
    // The first fix alone costs 10.
    expect(tried(10)).toEqual([1]);
    const cheapest = inFixedOrder({ ...input, handOverCost: 1000 }, ({ cost }) => -cost);
    expect(simulateRepair(unitWith(0), cheapest, bench).steps.map(({ index }) => index)).toEqual([1, 0]);
  });

  it('stop when no fix left is worth its own price', () => {
    const dear = { ...bench, handOverCost: 30 };
    // 0.5 x 30 is below 50 and .4 x 30 above 10; after that fails .83 x 30 is still below 50.
    const run = simulateRepair(unitWith(0), mostLikelyFirst(habitInput(dear)), dear);
    expect(run.steps).toEqual([{ kind: 'fix', index: 1, value: 0 }]);
  });
});

describe('followPlan', () => {
  it('is never beaten by a habit on average, on units drawn from its own tables', () => {
    const random = createRandom(41);
    for (let round = 0; round < 6; round++) {
      const problem = randomProblem(random, { causes: 6, fixes: 5, checks: 4, weighted: false });
      const plan = meanCost(problem, planPolicy(problem), 800, 5);
      for (const habit of [mostCommonFirst, cheapestFirst, mostLikelyFirst]) {
        // Other answers are drawn where other steps are taken: allow what chance does to 800 units.
        expect(plan).toBeLessThan(1.05 * meanCost(problem, habit(habitInput(problem)), 800, 5));
      }
    }
  });
});

describe('followSuggestions', () => {
  it('checks until a cause is proved, then fixes it', () => {
    const check = { table: Float64Array.of(1, 0, 0, 1, 0.5, 0.5), values: 2, weight: 1, minutes: 2, stage: 1 };
    const candidate = {
      ...check,
      prerequisitesMet: true,
      possible: true,
      instrumentsHeld: true,
      risk: 0,
      safetyFirst: false,
      alreadySetUp: false,
    } as const;
    const problem = { ...bench, posterior: Float64Array.of(0.6, 0.39, 0.01), checks: [check] };
    const policy = followSuggestions({ ...habitInput(problem), candidates: () => [candidate], poweredDone: () => true });
    const run = simulateRepair({ ...unitWith(1), check: () => 1 }, policy, problem);
    expect(run.steps).toEqual([
      { kind: 'check', index: 0, value: 1 },
      { kind: 'fix', index: 1, value: 0 },
    ]);
    expect(run).toMatchObject({ cured: true, minutes: 12 });
  });
});
