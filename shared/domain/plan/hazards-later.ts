import type { PlanProblem } from '../../stats/decide/plan-problem';
import { nextStep, type PlanMove, type PolicyNode, type RepairPlan, repairPlan } from '../../stats/decide/repair-plan';

/** Extra prices of a hazardous step that are tried one after another, as multiples of the hand-over cost. */
const PRICES = [0.25, 1, 4];

type Step = { kind: 'check' | 'fix'; index: number };

/** A problem, and which of its checks and fixes are hazardous, by index: plain data, that another thread can be given. */
export type PlanTask = { problem: PlanProblem; hazardous: Record<Step['kind'], readonly boolean[]> };

/** The plan of a task; see `planHazardsLater`. */
export function findPlan({ problem, hazardous }: PlanTask): RepairPlan {
  return planHazardsLater(problem, ({ kind, index }) => hazardous[kind][index] === true);
}

/**
 * A plan that does not begin with hazardous work (mains side, high voltage) while a safer step pays: where it would,
 * hazardous steps are priced up until a safer one comes first, and the extra price is then taken out of all costs
 * again. Where no safer step pays at any such price, the plain plan stands.
 */
export function planHazardsLater(problem: PlanProblem, isHazardous: (step: Step) => boolean): RepairPlan {
  const plain = repairPlan(problem);
  if (!beginsHazardous(plain, isHazardous)) return plain;
  for (const multiple of PRICES) {
    const price = multiple * problem.handOverCost;
    const plan = repairPlan(pricedUp(problem, isHazardous, price));
    if (plan.steps.length > 0 && !beginsHazardous(plan, isHazardous)) return withoutPrice(plan, isHazardous, price);
  }
  return plain;
}

/** The first step of that plan alone, or the hand-over: a third cheaper, for simulations that plan anew after every step. */
export function nextMoveHazardsLater(problem: PlanProblem, isHazardous: (step: Step) => boolean): PlanMove {
  const plain = nextStep(problem);
  if (plain.kind === 'hand-over' || !isHazardous(plain)) return plain;
  for (const multiple of PRICES) {
    const move = nextStep(pricedUp(problem, isHazardous, multiple * problem.handOverCost));
    if (move.kind !== 'hand-over' && !isHazardous(move)) return move;
  }
  return plain;
}

function beginsHazardous({ steps }: RepairPlan, isHazardous: (step: Step) => boolean): boolean {
  return steps[0] !== undefined && isHazardous(steps[0]);
}

function pricedUp(problem: PlanProblem, isHazardous: (step: Step) => boolean, price: number): PlanProblem {
  const extra = (kind: Step['kind'], index: number) => (isHazardous({ kind, index }) ? price : 0);
  return {
    ...problem,
    fixes: problem.fixes.map((fix, index) => ({ ...fix, partCost: fix.partCost + extra('fix', index) })),
    checks: problem.checks.map((check, index) => ({ ...check, partCost: (check.partCost ?? 0) + extra('check', index) })),
  };
}

function withoutPrice(plan: RepairPlan, isHazardous: (step: Step) => boolean, price: number): RepairPlan {
  const hazardous = hazardousByDepth(plan.policy, isHazardous);
  const all = price * (hazardous.at(-1) ?? 0);
  return {
    ...plan,
    steps: plan.steps.map((step, depth) => ({
      ...step,
      partCost: step.partCost - (isHazardous(step) ? price : 0),
      expectedPartCostSoFar: step.expectedPartCostSoFar - price * (hazardous[depth] ?? 0),
    })),
    expectedPartCost: plan.expectedPartCost - all,
    expectedCost: plan.expectedCost - all,
  };
}

/** Expected number of hazardous steps among the first one, two, ... steps of a plan, over all its ways. */
function hazardousByDepth(policy: PolicyNode | null, isHazardous: (step: Step) => boolean): number[] {
  const totals: number[] = [];
  let total = 0;
  // Level by level, since ways meet again: the reach of a node is the sum over the ways that lead to it.
  let level = new Map<PolicyNode, number>(policy === null ? [] : [[policy, 1]]);
  while (level.size > 0) {
    const next = new Map<PolicyNode, number>();
    for (const [node, reach] of level) {
      if (isHazardous(node.move)) total += reach;
      for (const { chance, to } of node.ways) if (to !== null) next.set(to, (next.get(to) ?? 0) + reach * chance);
    }
    totals.push(total);
    level = next;
  }
  return totals;
}
