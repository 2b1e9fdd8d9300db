import type { SimulatedUnit } from '../world';
import { type PlanFix, stepCost } from '../../shared/stats/decide/plan-problem';
import { nextStep } from '../../shared/stats/decide/repair-plan';
import type { HabitInput } from '../../shared/stats/decide/repair-habits';
import type { RepairPolicy, UnitAnswers } from '../../shared/stats/decide/simulate-repair';

/** What nobody can do: told the cause, or told what every fix would do. Bounds on what any advice could reach. */
export const BOUNDS = ['told the cause', 'told the cure'] as const;

/** The best sequence of fixes for the unit's cause and nothing else, by the casebook's chances to cure. */
export function toldTheCause(unit: SimulatedUnit, habit: HabitInput, causeOf: (slug: string) => number | undefined): RepairPolicy {
  const posterior = new Float64Array(habit.prior.length);
  posterior[causeOf(unit.cause) ?? habit.prior.length - 1] = 1;
  return ({ triedFixes }) => nextStep({ ...habit, posterior, checks: [], triedFixes });
}

/** The fix that cures this unit in the fewest minutes, or handing it over at once. */
export function toldTheCure(unit: UnitAnswers, { fixes, hourValue, handOverCost }: Pick<HabitInput, 'fixes' | 'hourValue' | 'handOverCost'>): RepairPolicy {
  const cost = (fix: PlanFix) => stepCost(fix, hourValue);
  const curing = [...fixes.keys()].filter((index) => cost(fixes[index]!) < handOverCost && unit.fix(index).cured);
  const quickest = curing.sort((a, b) => fixes[a]!.minutes - fixes[b]!.minutes)[0];
  return () => (quickest === undefined ? { kind: 'hand-over' } : { kind: 'fix', index: quickest });
}
