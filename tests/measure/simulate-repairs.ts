/**
 * Expected minutes to repair by the plan, by the first suggested check and by three habits, plain and learning from the look-up, on invented units that the
 * casebook has not seen:
 * `npx tsx tests/measure/simulate-repairs.ts demo|second [--units 2000] [--out runs.jsonl] [--policies plan,...] [--seed 77]
 * [--settings fitted.json] [--truth] [--cases 4200]`. Each unit is written to `--out` as it is done, and units that are there already are not run again, so that a run that
 * was cut goes on where it stopped and reports what it has. `--truth` gives the plan the exact beliefs of the world; the policies
 * `told the cause` and `told the cure` show what no advice could beat.
 *
 * **What is measured.** Minutes at the bench, those of failing checks and fixes included, plus, where a unit ends unrepaired,
 * the minutes that its handing over is worth: what a user pays to stop, at what an hour is worth to them (150 at 20 an hour, the
 * page's defaults, are 450 minutes). Every policy pays it alike, so giving up early is no saving. A repair counts when the
 * unit works; nobody is told the true cause. Safe power-up comes first for all. The all-in figure adds parts at the same rate, and is
 * what the plan itself keeps low;
 * with `--hand-over <minutes>` handing over costs that much instead, to the policies and in the measure;
 * with `--parts-free` plan and habits decide by minutes alone. Units without a fault are among them as they come to a bench.
 */
import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { createBench, HABITS, PLAIN_HABITS, type PolicyName, REPLAN_EFFORT } from '../../seed/simulate/bench-policies';
import { repairLines, summariseRepairs } from '../../seed/simulate/repair-report';
import { simulateUnit, type UnitResult } from '../../seed/simulate/simulate-unit';
import { casebookOf, keptFit } from './trained-model';
import { worldNamed } from './worlds';

const TRAINING_SEED = 20_250;
const REPORT_EVERY = 250;

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    units: { type: 'string', default: '2000' },
    out: { type: 'string' },
    cases: { type: 'string', default: '4200' },
    seed: { type: 'string', default: '77' },
    effort: { type: 'string', default: String(REPLAN_EFFORT) },
    policies: { type: 'string', default: ['plan', 'first check', ...HABITS, ...PLAIN_HABITS].join(',') },
    settings: { type: 'string' },
    truth: { type: 'boolean', default: false },
    'hand-over': { type: 'string' },
    'parts-free': { type: 'boolean', default: false },
  },
});
const handOver = values['hand-over'] === undefined ? undefined : Number(values['hand-over']);
const world = worldNamed(positionals[0] ?? 'demo');
const names = values.policies.split(',') as PolicyName[];
const say = (line: string) => process.stderr.write(`${line} (${Math.round(performance.now() / 1000)} s)\n`);

const drawn = world.drawCases(TRAINING_SEED, Number(values.cases));
const cases = drawn.map(({ content }) => content);
const model = casebookOf(world, cases, keptFit(world, cases, values.settings));
say('settings fitted');
const bench = createBench({
  model,
  effort: Number(values.effort),
  truth: values.truth ? world.truePosterior : undefined,
  partsAreFree: values['parts-free'],
  handOverMinutes: handOver,
});
const boards = drawn.map(({ board }) => board);

const results: UnitResult[] = values.out !== undefined && existsSync(values.out) ? readRuns(values.out) : [];
const done = new Set(results.map(({ unit }) => unit));
for (let number = 0; number < Number(values.units); number++) {
  if (done.has(number)) continue;
  const result = simulateUnit(world, bench, { number, seed: values.seed, boards, policies: names });
  results.push(result);
  if (values.out !== undefined) appendFileSync(values.out, `${JSON.stringify(result)}\n`);
  if (results.length % 50 === 0) say(`${results.length} units`);
  if (results.length % REPORT_EVERY === 0) report();
}
report();

function report(): void {
  console.log([`${world.name}:`, ...repairLines(summariseRepairs(results, handOver))].join('\n'));
}

function readRuns(path: string): UnitResult[] {
  return readFileSync(path, 'utf8')
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as UnitResult);
}
