import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import type { PlanCheck, PlanFix, PlanProblem } from '../../../shared/stats/decide/plan-problem';
import { nextStep, type PolicyNode, repairPlan } from '../../../shared/stats/decide/repair-plan';
import { createRandom } from '../../../shared/stats/random';
import { exactCost, policyCost } from './exact-plan';
import { disjointFixes } from './disjoint-fixes';
import { fullSizeProblem } from './full-size-problem';
import { chainCheck } from './half-split-chain';
import { randomProblem, randomSmallSize } from './random-problem';

// Exact sums and many random cases: some seconds alone, more on a busy machine.
vi.setConfig({ testTimeout: 120_000 });

const order = (problem: PlanProblem) => repairPlan(problem).steps.map((step) => step.index);

/** A random small problem for each seed. */
const smallProblem = fc.integer({ min: 1, max: 1_000_000 }).map((seed) => {
  const random = createRandom(seed);
  return randomProblem(random, randomSmallSize(random));
});

describe('repairPlan on fixes alone', () => {
  it('orders by chance over cost (Roughgarden, Algorithms Illuminated 3, 2019, ch. 13: sum of w x C is 15)', () => {
    const problem = disjointFixes([1 / 2, 1 / 3, 1 / 6], [1, 2, 3]);
    expect(order(problem)).toEqual([0, 1, 2]);
    expect(repairPlan(problem).expectedCost).toBeCloseTo(15 / 6, 12);
  });

  it('orders by ratio and not by difference (same source: 22 against 23)', () => {
    const problem = disjointFixes([3 / 4, 1 / 4], [5, 2]);
    expect(order(problem)).toEqual([0, 1]);
    expect(repairPlan(problem).expectedCost).toBeCloseTo(22 / 4, 12);
  });

  it('finds the least of all 24 orders (derivable: C, B, A, D for .4/8, .3/4, .2/1, .1/3 costs 8.5)', () => {
    const problem = disjointFixes([0.4, 0.3, 0.2, 0.1], [8, 4, 1, 3]);
    expect(order(problem)).toEqual([2, 1, 0, 3]);
    expect(repairPlan(problem).expectedCost).toBeCloseTo(8.5, 12);
  });

  it('finds the cheapest order of the board-test exercise (stop at the first failure; by enumeration Y, Z, X: 91.637125)', () => {
    const handOver = 10_000;
    const problem = boardTest(handOver);
    expect(order(problem)).toEqual([1, 2, 0]);
    const passes = 0.875 * 0.925 * 0.86;
    expect(repairPlan(problem).expectedCost - handOver * passes).toBeCloseTo(91.637125, 8);
  });

  it('repeats imperfect inspections by their current chance over cost (Blackwell, in Chew 1967, Annals of Mathematical Statistics 38)', () => {
    const overlook = [0.5, 0.2, 0.1];
    const copies = [5, 3, 2];
    const fixes = copies.flatMap((count, place) =>
      Array.from({ length: count }, () =>
        fixOf(
          [0, 1, 2].map((cause) => (cause === place ? 1 - overlook[place]! : 0)),
          1,
        ),
      ),
    );
    const place = copies.flatMap((count, index) => new Array<number>(count).fill(index + 1));
    const plan = repairPlan({
      posterior: Float64Array.of(0.5, 0.3, 0.2, 0),
      fixes,
      checks: [],
      hourValue: 0,
      handOverCost: 1000,
    });
    expect(plan.steps.map((step) => place[step.index])).toEqual([1, 2, 3, 1, 1, 2, 1, 3, 1, 2]);
    const gains = plan.steps.map((step) => step.chanceAfter - step.chanceBefore);
    [0.25, 0.24, 0.18, 0.125, 0.0625, 0.048, 0.03125, 0.018, 0.015625, 0.0096].forEach((gain, step) =>
      expect(gains[step]).toBeCloseTo(gain, 12),
    );
  });

  it('equals the exact optimum where no cause has two fixes (Kadane & Simon 1977; Heckerman, Breese & Rommelse 1995)', () => {
    const share = fc.double({ min: 0.01, max: 1, noNaN: true });
    const item = fc.record({ weight: share, cure: share, cost: fc.double({ min: 0.1, max: 50, noNaN: true }) });
    fc.assert(
      fc.property(
        fc.array(item, { minLength: 1, maxLength: 8 }),
        share,
        fc.double({ min: 1, max: 200, noNaN: true }),
        (items, unlisted, handOverCost) => {
          const sum = items.reduce((total, { weight }) => total + weight, unlisted);
          const fixes = items.map(({ cure, cost }, own) =>
            fixOf(
              items.map((_, cause) => (cause === own ? cure : 0)),
              cost,
            ),
          );
          const posterior = Float64Array.of(...items.map(({ weight }) => weight / sum), unlisted / sum);
          const problem = { posterior, fixes, checks: [], hourValue: 0, handOverCost };
          const found = repairPlan(problem).expectedCost;
          expect(found / exactCost(problem) - 1).toBeLessThan(1e-9);
        },
      ),
      { numRuns: 100 },
    );
  });

  it('equals the closed form with ninety disjoint fixes: sorted by chance over cost, cut where handing over is cheaper', () => {
    const random = createRandom(3);
    for (let round = 0; round < 5; round++) {
      const raw = Array.from({ length: 90 }, () => random() ** 3);
      const sum = raw.reduce((a, b) => a + b, 0);
      const chances = raw.map((weight) => (weight / sum) * 0.9);
      const costs = raw.map(() => 1 + 30 * random());
      const problem = { ...disjointFixes(chances, costs), handOverCost: 150 };
      const sorted = [...chances.keys()].sort((a, b) => chances[b]! / costs[b]! - chances[a]! / costs[a]!);
      let [left, spent, best] = [1, 0, 150];
      for (const fix of sorted) {
        spent += costs[fix]! * left;
        left -= chances[fix]!;
        best = Math.min(best, spent + 150 * left);
      }
      expect(repairPlan(problem).expectedCost).toBeCloseTo(best, 9);
    }
  });
});

describe('repairPlan with checks', () => {
  it('stays within 2 % of the exact optimum on average and 15 % at worst, over 500 random small problems', () => {
    const random = createRandom(20_240_611);
    const excesses: number[] = [];
    let betterThanHandingOver = 0;
    for (let round = 0; round < 500; round++) {
      const problem = randomProblem(random, randomSmallSize(random));
      const exact = exactCost(problem);
      const plan = repairPlan(problem);
      const cost = policyCost(problem, plan.policy);
      expect(plan.expectedCost).toBeCloseTo(cost, 8);
      excesses.push(cost / exact - 1);
      if (exact < problem.handOverCost * 0.999) betterThanHandingOver++;
    }
    // Only rounding may put it below the optimum; and the problems must be worth solving.
    expect(Math.min(...excesses)).toBeGreaterThan(-1e-9);
    expect(betterThanHandingOver).toBeGreaterThan(400);
    expect(excesses.reduce((a, b) => a + b, 0) / excesses.length).toBeLessThanOrEqual(0.02);
    expect(Math.max(...excesses)).toBeLessThanOrEqual(0.15);
  });

  it('stays within the same bounds where it cannot look at everything (one step ahead from each situation)', () => {
    const random = createRandom(7);
    const excesses: number[] = [];
    for (let round = 0; round < 200; round++) {
      const problem = { ...randomProblem(random, randomSmallSize(random)), effort: 100 };
      excesses.push(policyCost(problem, repairPlan(problem).policy) / exactCost(problem) - 1);
    }
    expect(excesses.reduce((a, b) => a + b, 0) / excesses.length).toBeLessThanOrEqual(0.02);
    expect(Math.max(...excesses)).toBeLessThanOrEqual(0.15);
  });

  it('stays within them on larger problems too, five fixes and five checks over nine causes', () => {
    const random = createRandom(5);
    for (let round = 0; round < 5; round++) {
      const problem = randomProblem(random, { causes: 9, fixes: 5, checks: 5 });
      expect(policyCost(problem, repairPlan(problem).policy) / exactCost(problem)).toBeLessThanOrEqual(1.02);
    }
  });

  it('costs at most 5 % more on average than with sixteen times the effort, at full size, in under 100 ms of computing', () => {
    const random = createRandom(9);
    const times: number[] = [];
    const ratios: number[] = [];
    for (let round = 0; round < 4; round++) {
      const problem = fullSizeProblem(random);
      const started = process.cpuUsage();
      const plan = repairPlan(problem);
      times.push(process.cpuUsage(started).user / 1000);
      expect(plan.expectedCost).toBeLessThan(0.95 * plan.fixesOnlyCost);
      ratios.push(plan.expectedCost / repairPlan({ ...problem, effort: 40_000 }).expectedCost);
    }
    expect(ratios.reduce((a, b) => a + b, 0) / ratios.length).toBeLessThanOrEqual(1.05);
    // The least of several: other work on the machine, and the first runs before compilation, only ever add.
    expect(Math.min(...times)).toBeLessThan(100);
  });

  it('finds the unequal chain in 2.6 checks, which the most informative check first does not (derivable: 1 + .6 x 8/3)', () => {
    const chances = [0.4, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1];
    const checks = Array.from({ length: 6 }, (_, index) => ({ ...chainCheck(7, index + 1), minutes: 1, stage: 0 }));
    // A fix costs a hundred checks, so that no fix is tried before its cause is known.
    const problem = { ...disjointFixes(chances, new Array<number>(7).fill(100)), checks, hourValue: 60 };
    const plan = repairPlan(problem);
    expect(plan.expectedCost).toBeCloseTo(102.6, 9);
    expect(plan.steps[0]).toMatchObject({ kind: 'check', index: 0 });
  });

  it('follows a check with what each outcome calls for, and lists the line that goes on', () => {
    const check: PlanCheck = { table: Float64Array.of(1, 0, 0, 1, 0.5, 0.5), values: 2, weight: 1, minutes: 1, stage: 1 };
    const problem = { ...disjointFixes([0.6, 0.4], [50, 50]), checks: [check], hourValue: 60 };
    const plan = repairPlan(problem);
    expect(plan.steps[0]!.outcomes.map(({ next }) => next)).toEqual([
      { kind: 'fix', index: 0 },
      { kind: 'fix', index: 1 },
    ]);
    expect(plan.steps[0]).toMatchObject({ kind: 'check', follows: 0, reason: 'saves-more-than-it-costs', chanceAfter: 0 });
    // Without the check 50 + .4 x 50 = 70; with it 1 + 50.
    expect(plan.steps[0]!.saves).toBeCloseTo(19, 9);
    expect(plan.steps[1]).toMatchObject({ kind: 'fix', index: 0, chanceHere: 1, chanceAfter: 1 });
    expect(plan.expectedMinutes).toBeCloseTo(1, 12);
    expect(plan.expectedPartCost).toBeCloseTo(50, 12);
  });

  it('does the checks that come first before anything else, in their order, on every branch', () => {
    const random = createRandom(21);
    for (let round = 0; round < 40; round++) {
      const problem = { ...randomProblem(random, { causes: 4, fixes: 3, checks: 4 }), firstChecks: [2, 0] };
      const { policy, expectedCost } = repairPlan(problem);
      expect(policy?.move).toEqual({ kind: 'check', index: 2 });
      for (const way of policy!.ways) expect(way.to?.move).toEqual({ kind: 'check', index: 0 });
      expect(policyCost(problem, policy)).toBeCloseTo(expectedCost, 8);
      expect(repairPlan(problem).steps[0]!.reason).toBe('comes-first');
    }
  });

  it('does no check before its prerequisites, nor where one of them is out of reach', () => {
    const random = createRandom(22);
    for (let round = 0; round < 60; round++) {
      const problem = randomProblem(random, { causes: 4, fixes: 3, checks: 3 });
      problem.checks.forEach((check, index) => Object.assign(check, { prerequisites: index === 0 ? [1] : [] }));
      walk(repairPlan(problem).policy, (path) => {
        const checks = path.flatMap(({ move }) => (move.kind === 'check' ? [move.index] : []));
        if (checks.includes(0)) expect(checks.indexOf(1)).toBeLessThan(checks.indexOf(0));
        if (checks.includes(0)) expect(checks).toContain(1);
      });
      walk(repairPlan({ ...problem, struckChecks: [1] }).policy, (path) => {
        expect(path.some(({ move }) => move.kind === 'check' && move.index === 0)).toBe(false);
      });
    }
  });
});

describe('nextStep', () => {
  it('counts a check that was done as a prerequisite met, and offers nothing again that was tried or done', () => {
    const telling: PlanCheck = { table: Float64Array.of(1, 0, 0, 1, 0.5, 0.5), values: 2, weight: 1, minutes: 1, stage: 1 };
    const problem = {
      ...disjointFixes([0.6, 0.4], [50, 50]),
      checks: [telling, { ...telling, prerequisites: [2] }, telling],
      hourValue: 60,
    };
    expect(nextStep({ ...problem, doneChecks: [0, 2] })).toEqual({ kind: 'check', index: 1 });
    expect(nextStep({ ...problem, struckChecks: [0, 2] })).toEqual({ kind: 'fix', index: 0 });
    expect(nextStep({ ...problem, struckChecks: [0, 1, 2], triedFixes: [0] })).toEqual({ kind: 'fix', index: 1 });
  });

  it('is the first step of the plan on small problems', () => {
    fc.assert(
      fc.property(smallProblem, (problem) => {
        const { policy } = repairPlan({ ...problem, effort: 600 });
        expect(nextStep(problem)).toEqual(policy?.move ?? { kind: 'hand-over' });
      }),
      { numRuns: 40 },
    );
  });
});

describe('repairPlan', () => {
  it('ends every line in handing over or a sure cure, tries nothing twice, and accounts for every unit', () => {
    fc.assert(
      fc.property(smallProblem, (problem) => {
        const plan = repairPlan(problem);
        walk(plan.policy, (path) => {
          const moves = path.map(({ move }) => `${move.kind} ${move.index}`);
          expect(new Set(moves).size).toBe(moves.length);
          const last = path.at(-1);
          if (last?.move.kind === 'check') expect(last.ways.length).toBeGreaterThan(0);
        });
        expect(plan.chanceResolved + plan.handOver.chance).toBeCloseTo(1, 12);
        const money =
          (plan.expectedMinutes * problem.hourValue) / 60 + plan.expectedPartCost + plan.handOver.chance * problem.handOverCost;
        expect(money).toBeCloseTo(plan.expectedCost, 8);
        // Beliefs average out over the outcomes of a check at weight 1 only; then nothing saves the unlisted from the end.
        const isExact = problem.checks.every(({ weight }) => weight === 1);
        if (isExact) expect(plan.handOver.chance).toBeGreaterThanOrEqual(problem.posterior.at(-1)! - 1e-9);
      }),
      { numRuns: 100 },
    );
  });

  it('never costs more than the best fixes without checks, nor than handing over at once', () => {
    fc.assert(
      fc.property(smallProblem, fc.constantFrom(1, 10, 50, undefined), (problem, effort) => {
        const plan = repairPlan({ ...problem, effort });
        expect(plan.expectedCost).toBeLessThanOrEqual(plan.fixesOnlyCost + 1e-9);
        expect(plan.fixesOnlyCost).toBeLessThanOrEqual(problem.handOverCost + 1e-9);
      }),
      { numRuns: 100 },
    );
  });

  it('gets no cheaper by more than 2 % when a step is struck, and leaves the step out', () => {
    fc.assert(
      fc.property(smallProblem, (problem) => {
        const plan = repairPlan(problem);
        for (const { kind, index } of plan.steps) {
          const without = repairPlan({ ...problem, ...(kind === 'fix' ? { struckFixes: [index] } : { struckChecks: [index] }) });
          expect(without.expectedCost).toBeGreaterThanOrEqual(plan.expectedCost * 0.98);
          walk(without.policy, (path) => expect(path.some(({ move }) => move.kind === kind && move.index === index)).toBe(false));
        }
      }),
      { numRuns: 40 },
    );
  });

  it('runs its chances and expected spending up from step to step, to no more than the whole', () => {
    fc.assert(
      fc.property(smallProblem, (problem) => {
        const { steps, chanceResolved, expectedMinutes } = repairPlan(problem);
        steps.forEach((step, place) => {
          expect(step.chanceBefore).toBeCloseTo(place === 0 ? 0 : steps[place - 1]!.chanceAfter, 12);
          expect(step.chanceAfter).toBeGreaterThanOrEqual(step.chanceBefore - 1e-12);
          expect(step.chanceAfter).toBeLessThanOrEqual(chanceResolved + 1e-9);
          expect(step.expectedMinutesSoFar).toBeLessThanOrEqual(expectedMinutes + 1e-9);
        });
      }),
      { numRuns: 100 },
    );
  });

  it('leaves out steps above the stage that the user can do', () => {
    fc.assert(
      fc.property(smallProblem, fc.integer({ min: 0, max: 4 }), (problem, maxStage) => {
        for (const { kind, index } of repairPlan({ ...problem, maxStage }).steps) {
          expect((kind === 'fix' ? problem.fixes : problem.checks)[index]!.stage).toBeLessThanOrEqual(maxStage);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('hands over at once where the unlisted cause is sure, or nothing is worth its price', () => {
    const unlisted = { ...disjointFixes([0, 0], [1, 1]), posterior: Float64Array.of(0, 0, 1), handOverCost: 100 };
    expect(repairPlan(unlisted)).toMatchObject({ steps: [], expectedCost: 100, chanceResolved: 0, policy: null });
    expect(nextStep({ ...disjointFixes([0.5, 0.5], [60, 60]), handOverCost: 50 })).toEqual({ kind: 'hand-over' });
  });

  it('refuses beliefs that do not sum to 1, chances beyond 1, and money that is not a number', () => {
    const problem = disjointFixes([0.5, 0.5], [1, 1]);
    expect(() => repairPlan({ ...problem, posterior: Float64Array.of(0.5, 0.4, 0) })).toThrow(/sum to 1, not 0.9/);
    expect(() => repairPlan({ ...problem, fixes: [fixOf([1.2, 0], 1)] })).toThrow(/between 0 and 1/);
    expect(() => repairPlan({ ...problem, handOverCost: Number.NaN })).toThrow(/hand-over cost/);
    expect(() => repairPlan({ ...problem, fixes: [{ ...fixOf([1, 0], 1), cure: Float64Array.of(1) }] })).toThrow(/3 chances/);
  });
});

function fixOf(cure: number[], partCost: number): PlanFix {
  return { cure: Float64Array.of(...cure, 0), minutes: 0, partCost, stage: 0 };
}

/** Three tests of which any may fail on its own; failing is what ends the line, so one cause and three chances. */
function boardTest(handOverCost: number): PlanProblem {
  const fixes = [fixOf([0.125], 51.75), fixOf([0.075], 2), fixOf([0.14], 52.4)];
  return { posterior: Float64Array.of(1, 0), fixes, checks: [], hourValue: 0, handOverCost };
}

/** Visits every line of a policy, from its start to a hand-over or a sure cure. */
function walk(policy: PolicyNode | null, visit: (path: PolicyNode[]) => void, path: PolicyNode[] = []): void {
  if (policy === null || policy.ways.length === 0) visit(policy === null ? path : [...path, policy]);
  else for (const way of policy.ways) walk(way.to, visit, [...path, policy]);
}
