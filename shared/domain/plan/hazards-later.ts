import type { PlanProblem, StepRef } from '../../stats/decide/plan-problem';
import { nextStep, type PlanMove, type RepairPlan, repairPlan } from '../../stats/decide/repair-plan';

/** Extra prices of a hazardous step that are tried one after another, as multiples of the hand-over cost. */
const PRICES = [0.25, 1, 4];

/** A problem, and which of its checks and fixes are hazardous, by index: plain data, that another thread can be given. */
export type PlanTask = { problem: PlanProblem; hazardous: Record<StepRef['kind'], readonly boolean[]> };

/** The plan of a task; see `planHazardsLater`. */
export function findPlan({ problem, hazardous }: PlanTask): RepairPlan {
  return planHazardsLater(problem, ({ kind, index }) => hazardous[kind][index] === true);
}

/**
 * A plan that does not begin with hazardous work (mains side, high voltage) while a safer step pays. Where it would, hazardous
 * steps are priced up until a safer one comes first; the plan begins with that one, and all that follows is planned at true prices,
 * so that its chances and costs are those of the whole plan. Where no safer step pays at any such price, the plain plan stands.
 */
export function planHazardsLater(problem: PlanProblem, isHazardous: (step: StepRef) => boolean): RepairPlan {
  const plain = repairPlan(problem);
  const first = plain.steps[0];
  const start = first === undefined ? null : saferStart(problem, first, isHazardous);
  return start === null ? plain : repairPlan({ ...problem, start });
}

/** The first step of that plan alone, or the hand-over: cheaper, for simulations that plan anew after every step. */
export function nextMoveHazardsLater(problem: PlanProblem, isHazardous: (step: StepRef) => boolean): PlanMove {
  const plain = nextStep(problem);
  return plain.kind === 'hand-over' ? plain : (saferStart(problem, plain, isHazardous) ?? plain);
}

/** The safer step to begin with instead of a hazardous one; null where the first step is safe, or nothing safer pays. */
function saferStart(problem: PlanProblem, first: StepRef, isHazardous: (step: StepRef) => boolean): StepRef | null {
  if (!isHazardous(first)) return null;
  for (const multiple of PRICES) {
    const move = nextStep(pricedUp(problem, isHazardous, multiple * problem.handOverCost));
    if (move.kind !== 'hand-over' && !isHazardous(move)) return move;
  }
  return null;
}

function pricedUp(problem: PlanProblem, isHazardous: (step: StepRef) => boolean, price: number): PlanProblem {
  const extra = (kind: StepRef['kind'], index: number) => (isHazardous({ kind, index }) ? price : 0);
  return {
    ...problem,
    fixes: problem.fixes.map((fix, index) => ({ ...fix, partCost: fix.partCost + extra('fix', index) })),
    checks: problem.checks.map((check, index) => ({ ...check, partCost: (check.partCost ?? 0) + extra('check', index) })),
  };
}
