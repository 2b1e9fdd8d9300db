/**
 * Expected minutes to repair by the plan, by the suggestions and by three habits, on invented units that the casebook
 * has not seen: `npx tsx tests/measure/simulate-repairs.ts demo|second [units] [effort]`.
 */
import { fork } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { HABITS, type PolicyName, REPLAN_EFFORT } from './bench-policies';
import type { UnitResult, WorkerTask } from './simulate-worker';
import { fitOn } from './trained-model';
import { worldNamed } from './worlds';

const CASES = 4200;
const TRAINING_SEED = 20_250;
const UNIT_SEED = 77;
const WORKERS = 2;
/** At the page's defaults: 150 to stop or hand over, 20 an hour. */
const HAND_OVER_MINUTES = (150 / 20) * 60;
const MINUTES_PER_CENT = 60 / 2000;

const [name = 'demo', unitCount = '2000', effort = String(REPLAN_EFFORT), keep] = process.argv.slice(2);
const started = performance.now();
const elapsed = () => `${((performance.now() - started) / 1000).toFixed(0)} s`;
const say = (line: string) => process.stderr.write(`${line}\n`);

const world = worldNamed(name);
const drawn = world.drawCases(TRAINING_SEED, CASES);
const cases = drawn.map(({ content }) => content);
say(`${CASES} cases drawn, ${elapsed()}`);
const settings = fitOn(world, cases);
say(`settings fitted, ${elapsed()}`);
const results = await runAll();
if (keep !== undefined) writeFileSync(keep, JSON.stringify(results));
report(results);
say(`done, ${elapsed()}`);

function runAll(): Promise<UnitResult[]> {
  const all: UnitResult[] = [];
  const part = (worker: number) =>
    new Promise<void>((resolve, reject) => {
      const units = Array.from({ length: Number(unitCount) }, (_, i) => i).filter((i) => i % WORKERS === worker);
      const boards = drawn.map(({ board }) => board);
      const task: WorkerTask = { world: name, cases, boards, settings, seed: UNIT_SEED, units, effort: Number(effort) };
      const child = fork(new URL('./simulate-worker.ts', import.meta.url), { serialization: 'advanced' });
      child.on('message', (result: UnitResult) => {
        all.push(result);
        if (all.length % 100 === 0) say(`${all.length} units, ${elapsed()}`);
      });
      child.on('error', reject);
      child.on('exit', (code) => (code === 0 ? resolve() : reject(new Error(`A part ended with exit code ${code}.`))));
      child.send(task);
    });
  return Promise.all(Array.from({ length: WORKERS }, (_, worker) => part(worker))).then(() =>
    all.sort((a, b) => a.unit - b.unit),
  );
}

function report(units: readonly UnitResult[]): void {
  const policies = units[0]!.runs.map(({ policy }) => policy);
  const column = (policy: PolicyName, of: (run: UnitResult['runs'][number]) => number) =>
    units.map(({ runs }) => of(runs.find((run) => run.policy === policy)!));
  const total = (policy: PolicyName) => column(policy, (run) => run.minutes + (run.cured ? 0 : HAND_OVER_MINUTES));
  const cost = (policy: PolicyName) =>
    column(policy, (run) => (run.minutes + (run.cured ? 0 : HAND_OVER_MINUTES)) / 3 + run.partCost / 100);
  console.log(
    `${name}: ${units.length} units; a hand-over counts ${HAND_OVER_MINUTES} minutes; parts at ${1 / MINUTES_PER_CENT / 100} a minute are in the cost only`,
  );
  for (const policy of policies) {
    const shown = [
      ['minutes', mean(total(policy))],
      ['at the bench', mean(column(policy, (run) => run.minutes))],
      ['cost', mean(cost(policy))],
      ['repaired', mean(column(policy, (run) => (run.cured ? 100 : 0)))],
      ['steps', mean(column(policy, (run) => run.steps.length))],
    ] as const;
    console.log(
      `  ${policy.padEnd(24)}${shown.map(([label, m]) => `${label} ${m.mean.toFixed(1)} ± ${m.error.toFixed(1)}`).join(', ')}`,
    );
  }
  const best = HABITS.reduce((a, b) => (mean(total(b)).mean < mean(total(a)).mean ? b : a));
  for (const policy of ['plan', 'suggestions'] as const) {
    const ratios = HABITS.map((habit) => `${ratio(total(policy), total(habit))} of ${habit}`);
    console.log(`  ${policy}: minutes ${ratios.join(', ')}; cost ${ratio(cost(policy), cost(best))} of ${best}`);
    const beaten = HABITS.map((habit) => share(total(policy), total(habit)));
    console.log(`    fewer / as many / more minutes than: ${HABITS.map((habit, i) => `${habit} ${beaten[i]}`).join(', ')}`);
  }
  const sound = units.filter(({ cause }) => cause === 'no-fault-found').length;
  console.log(`  ${sound} of the units have no fault and can only be handed over`);
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
