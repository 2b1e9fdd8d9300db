import { posteriorAfter, predictive } from './check-model';
import { type PlanProblem, stepCost } from './plan-problem';
import { repairPlan } from './repair-plan';

export type CheckValue = {
  /** Expected cost of the best plan found without this check. */
  costWithout: number;
  /** Expected cost of doing this check first and going on as well as can be, its own cost included. */
  costWith: number;
  /** Each outcome's chance, and the expected cost from there on, the check's own cost not included. */
  outcomes: { value: number; probability: number; cost: number }[];
  /** What knowing the outcome saves, before the check's own cost; above 0 where it can change what is done. */
  gross: number;
  /** What doing the check saves; where it is negative the check is not worth its price. */
  net: number;
};

/**
 * What a check is worth before it is done: the expected value of sample information, in the unit of the costs (H. Raiffa,
 * "Decision Analysis", 1968). Both sides use plans found by the same search. Throws a RangeError on an ill-formed problem.
 */
export function valueOfCheck(problem: PlanProblem, index: number): CheckValue {
  const check = problem.checks[index];
  if (check === undefined) throw new RangeError(`There is no check ${index}.`);
  const rest = { ...problem, struckChecks: [...(problem.struckChecks ?? []), index] };
  const costWithout = repairPlan(rest).expectedCost;
  const outcomes: CheckValue['outcomes'] = [];
  let after = 0;
  predictive(problem.posterior, check).forEach((probability, value) => {
    const cost = repairPlan({ ...rest, posterior: posteriorAfter(problem.posterior, check, value) }).expectedCost;
    outcomes.push({ value, probability, cost });
    after += probability * cost;
  });
  const price = stepCost(check, problem.hourValue);
  return { costWithout, costWith: price + after, outcomes, gross: costWithout - after, net: costWithout - after - price };
}
