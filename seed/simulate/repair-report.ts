import type { RepairSummary } from '../../shared/schemas/evaluation';
import { HABITS, PLAIN_HABITS, type PolicyName } from './bench-policies';
import type { UnitResult, UnitRun } from './simulate-unit';

/** At the page's defaults: 150 to stop or hand over, 20 an hour. */
export const HAND_OVER_MINUTES = (150 / 20) * 60;
const MINUTES_PER_CENT = 60 / 2000;

/** Mean minutes of each policy, and each piece of advice against each habit, with standard errors over units. */
export function summariseRepairs(units: readonly UnitResult[], handOverMinutes: number = HAND_OVER_MINUTES): RepairSummary {
  const totalMinutes = (run: UnitRun) => run.minutes + (run.cured ? 0 : handOverMinutes);
  const allIn = (run: UnitRun) => totalMinutes(run) + run.partCost * MINUTES_PER_CENT;
  const policies = units[0]!.runs.map(({ policy }) => policy);
  const column = (policy: PolicyName, of: (run: UnitRun) => number) => units.map(({ runs }) => of(runs.find((run) => run.policy === policy)!));
  const habits = [...HABITS, ...PLAIN_HABITS].filter((habit) => policies.includes(habit));
  const advice = policies.filter((name) => !habits.some((habit) => habit === name));
  return {
    units: units.length,
    handOverMinutes,
    policies: policies.map((policy) => ({
      policy,
      minutes: mean(column(policy, totalMinutes)),
      benchMinutes: mean(column(policy, (run) => run.minutes)).mean,
      allIn: mean(column(policy, allIn)).mean,
      repaired: mean(column(policy, (run) => (run.cured ? 1 : 0))).mean,
      steps: mean(column(policy, (run) => run.steps.length)).mean,
    })),
    ratios: advice.flatMap((policy) =>
      habits.map((habit) => ({
        policy,
        habit,
        minutes: ratio(column(policy, totalMinutes), column(habit, totalMinutes)),
        allIn: ratio(column(policy, allIn), column(habit, allIn)).mean,
        fewer: share(column(policy, totalMinutes), column(habit, totalMinutes)),
      })),
    ),
  };
}

/** The summary as lines for a terminal. */
export function repairLines({ units, handOverMinutes, policies, ratios }: RepairSummary): string[] {
  return [
    `${units} units; a hand-over counts ${handOverMinutes} minutes`,
    ...policies.map(
      ({ policy, minutes, benchMinutes, allIn: all, repaired, steps }) =>
        `  ${policy.padEnd(20)}minutes ${shown(minutes, 1)}, at the bench ${benchMinutes.toFixed(1)}, all-in ${all.toFixed(1)}, repaired ${(100 * repaired).toFixed(1)} %, steps ${steps.toFixed(1)}`,
    ),
    ...ratios.map(
      ({ policy, habit, minutes, allIn: all, fewer }) =>
        `  ${policy} / ${habit}: minutes ${shown(minutes, 3)}, all-in ${all.toFixed(3)}; fewer minutes in ${(100 * fewer).toFixed(0)} % of the units`,
    ),
  ];
}

type Estimate = RepairSummary['policies'][number]['minutes'];

function shown({ mean: middle, error }: Estimate, digits: number): string {
  return `${middle.toFixed(digits)} ± ${error.toFixed(digits)}`;
}

function mean(values: readonly number[]): Estimate {
  const average = values.reduce((a, b) => a + b, 0) / values.length;
  const variance = values.reduce((sum, v) => sum + (v - average) ** 2, 0) / Math.max(1, values.length - 1);
  return { mean: average, error: Math.sqrt(variance / values.length) };
}

/** Ratio of two means over the same units, with its standard error by the delta method. */
function ratio(above: readonly number[], below: readonly number[]): Estimate {
  const r = mean(above).mean / mean(below).mean;
  return { mean: r, error: mean(above.map((value, i) => value - r * below[i]!)).error / mean(below).mean };
}

function share(mine: readonly number[], theirs: readonly number[]): number {
  return mine.filter((value, i) => value < theirs[i]!).length / mine.length;
}
