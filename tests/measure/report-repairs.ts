import { HABITS, type PolicyName } from './bench-policies';

export type UnitRun = { policy: PolicyName; cured: boolean; minutes: number; partCost: number; steps: string[] };
export type UnitResult = { unit: number; board: string; cause: string; runs: UnitRun[] };

/** At the page's defaults: 150 to stop or hand over, 20 an hour. */
const HAND_OVER_MINUTES = (150 / 20) * 60;
const MINUTES_PER_CENT = 60 / 2000;

/** Minutes of a run: at the bench, and what handing over is worth where it came to that. */
const totalMinutes = (run: UnitRun) => run.minutes + (run.cured ? 0 : HAND_OVER_MINUTES);
const allIn = (run: UnitRun) => totalMinutes(run) + run.partCost * MINUTES_PER_CENT;

/** Prints means, and the ratios of advice to habits with standard errors over units. */
export function reportRepairs(world: string, units: readonly UnitResult[]): void {
  const policies = units[0]!.runs.map(({ policy }) => policy);
  const column = (policy: PolicyName, of: (run: UnitRun) => number) => units.map(({ runs }) => of(runs.find((run) => run.policy === policy)!));
  console.log(`${world}: ${units.length} units; a hand-over counts ${HAND_OVER_MINUTES} minutes`);
  for (const policy of policies) {
    const shown = [
      ['minutes', mean(column(policy, totalMinutes))],
      ['at the bench', mean(column(policy, (run) => run.minutes))],
      ['all-in', mean(column(policy, allIn))],
      ['repaired %', mean(column(policy, (run) => (run.cured ? 100 : 0)))],
      ['steps', mean(column(policy, (run) => run.steps.length))],
    ] as const;
    console.log(`  ${policy.padEnd(20)}${shown.map(([label, m]) => `${label} ${m.mean.toFixed(1)} ± ${m.error.toFixed(1)}`).join(', ')}`);
  }
  const habits = HABITS.filter((habit) => policies.includes(habit));
  for (const policy of policies.filter((name) => !habits.includes(name as (typeof habits)[number]))) {
    for (const habit of habits) {
      const minutes = ratio(column(policy, totalMinutes), column(habit, totalMinutes));
      const cost = ratio(column(policy, allIn), column(habit, allIn));
      const fewer = share(column(policy, totalMinutes), column(habit, totalMinutes));
      console.log(`  ${policy} / ${habit}: minutes ${minutes}, all-in ${cost}; fewer, as many, more minutes ${fewer}`);
    }
  }
  console.log(`  ${units.filter(({ cause }) => cause === 'no-fault-found').length} of the units have no fault`);
}

function mean(values: readonly number[]): { mean: number; error: number } {
  const average = values.reduce((a, b) => a + b, 0) / values.length;
  const variance = values.reduce((sum, v) => sum + (v - average) ** 2, 0) / Math.max(1, values.length - 1);
  return { mean: average, error: Math.sqrt(variance / values.length) };
}

/** Ratio of two means over the same units, with its standard error by the delta method. */
function ratio(above: readonly number[], below: readonly number[]): string {
  const r = mean(above).mean / mean(below).mean;
  const error = mean(above.map((value, i) => value - r * below[i]!)).error / mean(below).mean;
  return `${r.toFixed(3)} ± ${error.toFixed(3)}`;
}

function share(mine: readonly number[], theirs: readonly number[]): string {
  const signs = mine.map((value, i) => Math.sign(value - theirs[i]!));
  return [-1, 0, 1].map((sign) => `${Math.round((100 * signs.filter((s) => s === sign).length) / signs.length)}%`).join(' / ');
}
