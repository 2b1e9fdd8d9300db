import { describe, expect, it } from 'vitest';
import type { PlanCheck, PlanProblem } from '../../../shared/stats/decide/plan-problem';
import { nextStep, repairPlan } from '../../../shared/stats/decide/repair-plan';
import { valueOfCheck } from '../../../shared/stats/decide/value-of-check';

const check = (rows: number[][], partCost: number): PlanCheck => ({
  table: Float64Array.from(rows.flat()),
  values: rows[0]!.length,
  weight: 1,
  minutes: 0,
  partCost,
  stage: 0,
});

/**
 * A gamble against declining (0) as a repair: the stake is the fix's cost, and what a state pays beyond it is the chance to
 * be spared a hand-over of the largest payment. Expected cost is then that hand-over less the expected gain.
 */
function gamble(chances: number[], gains: number[], checks: PlanCheck[]): PlanProblem {
  const stake = -Math.min(...gains);
  const handOverCost = Math.max(...gains) + stake;
  return {
    posterior: Float64Array.of(...chances, 0),
    fixes: [
      { cure: Float64Array.of(...gains.map((gain) => (gain + stake) / handOverCost), 0), minutes: 0, partCost: stake, stage: 0 },
    ],
    checks,
    hourValue: 0,
    handOverCost,
  };
}

const gainOf = (problem: PlanProblem) => (cost: number) => problem.handOverCost - cost;

describe('valueOfCheck', () => {
  it("values the oil wildcatter's seismic test (Raiffa, Decision Analysis, 1968)", () => {
    const states = [
      [0.1, 0.3, 0.6],
      [0.3, 0.4, 0.3],
      [0.5, 0.4, 0.1],
      [1 / 3, 1 / 3, 1 / 3],
    ];
    const perfect = [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
      [1, 0, 0],
    ];
    const problem = gamble([0.5, 0.3, 0.2], [-70, 50, 200], [check(states, 10), check(perfect, 0)]);
    const gain = gainOf(problem);
    const withoutOracle = { ...problem, struckChecks: [1] };
    const seismic = valueOfCheck(withoutOracle, 0);
    expect(gain(seismic.costWithout)).toBeCloseTo(20, 9);
    [0.24, 0.35, 0.41].forEach((chance, value) => expect(seismic.outcomes[value]!.probability).toBeCloseTo(chance, 12));
    [87.5, 32.857142857, 0].forEach((worth, value) => expect(gain(seismic.outcomes[value]!.cost)).toBeCloseTo(worth, 8));
    expect(seismic.gross).toBeCloseTo(12.5, 9);
    expect(gain(seismic.costWith)).toBeCloseTo(22.5, 9);
    expect(valueOfCheck({ ...problem, struckChecks: [0] }, 1).gross).toBeCloseTo(35, 9);
    const plan = repairPlan(withoutOracle);
    expect(gain(plan.expectedCost)).toBeCloseTo(22.5, 9);
    const drill = { kind: 'fix', index: 0 };
    expect(plan.steps[0]!.outcomes.map(({ next }) => next)).toEqual([drill, drill, { kind: 'hand-over' }]);
    const drills = plan.steps[0]!.outcomes.filter(({ next }) => next.kind === 'fix').reduce(
      (sum, { probability }) => sum + probability,
      0,
    );
    expect(drills).toBeCloseTo(0.59, 12);
  });

  it("does not buy a test that changes the decision but is not worth its price (Neapolitan's used car: 28, 26.2, 22.733)", () => {
    const first = check(
      [
        [0.9, 0.1],
        [0.4, 0.6],
        [0.5, 0.5],
      ],
      9,
    );
    const both = check(
      [
        [0.9 * (8 / 9), 0.9 * (1 / 9), 0.1, 0],
        [0.4 * (1 / 3), 0.4 * (2 / 3), 0.6 * (4 / 9), 0.6 * (5 / 9)],
        [0.25, 0.25, 0.25, 0.25],
      ],
      13,
    );
    const problem = gamble([0.8, 0.2], [60, -100], [first, both]);
    const gain = gainOf(problem);
    const one = valueOfCheck({ ...problem, struckChecks: [1] }, 0);
    expect(gain(one.costWithout)).toBeCloseTo(28, 9);
    expect(gain(one.costWith)).toBeCloseTo(26.2, 9);
    // It changes what is done: after a negative result the car is left alone.
    expect(gain(one.outcomes[0]!.cost)).toBeGreaterThan(0);
    expect(gain(one.outcomes[1]!.cost)).toBe(0);
    expect(one.gross).toBeGreaterThan(0);
    expect(one.net).toBeLessThan(0);
    const two = valueOfCheck({ ...problem, struckChecks: [0] }, 1);
    expect(gain(two.costWith)).toBeCloseTo(22.733333333, 8);
    // Both positive: good with chance .96, worth 60 x .96 - 100 x .04 = 53.6, printed as 40.6 net of the 13 paid.
    expect(gain(two.outcomes[0]!.cost) - 13).toBeCloseTo(40.6, 9);
    expect(nextStep(problem)).toEqual({ kind: 'fix', index: 0 });
    expect(gain(repairPlan(problem).expectedCost)).toBeCloseTo(28, 9);
  });

  it('gives nothing for a test after which one buys either way (used-car buyer, exercise in Russell & Norvig after Pearl 1988)', () => {
    const test = check(
      [
        [0.8, 0.2],
        [0.35, 0.65],
        [0.5, 0.5],
      ],
      50,
    );
    const problem = gamble([0.7, 0.3], [500, -200], [test]);
    const gain = gainOf(problem);
    const found = valueOfCheck(problem, 0);
    expect(gain(found.costWithout)).toBeCloseTo(290, 9);
    expect(found.outcomes[0]!.probability).toBeCloseTo(0.665, 12);
    expect(gain(found.outcomes[0]!.cost)).toBeCloseTo(389.473684, 6);
    expect(gain(found.outcomes[1]!.cost)).toBeCloseTo(92.537313, 6);
    expect(found.gross).toBeCloseTo(0, 9);
    expect(found.net).toBeCloseTo(-50, 9);
    expect(repairPlan(problem).steps.map(({ kind }) => kind)).toEqual(['fix']);
  });

  it('refuses a check that is not there', () => {
    expect(() => valueOfCheck(gamble([1], [-1], []), 0)).toThrow(/no check 0/);
  });
});
