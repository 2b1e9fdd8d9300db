// `npm run benchmark [-- --quick] [--only <row ids>] [--write]`: every figure beside its alternative in the same run. See README.md here.
import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { projectFolder } from '../../server/start/project-folder.mjs';
import { acceptRow } from './rows/accepting';
import { servingRows } from './rows/serving';
import type { Row } from './run/measure';
import { machineWords, pageOf, type Report } from './run/report';

const { values } = parseArgs({
  options: { quick: { type: 'boolean', default: false }, only: { type: 'string' }, write: { type: 'boolean', default: false } },
});
const { quick } = values;

/** Which rows are measured at which size, each size in a process of its own. */
const SIZES = quick
  ? [
      { cases: 10_000, rounds: 20, rows: ['matching', 'similar', 'posterior', 'start', 'memory'] },
      // A fit of more takes minutes.
      { cases: 1_000, rounds: 20, rows: ['change'] },
      { cases: 5_000, rounds: 20, rows: ['look-up', 'search'] },
    ]
  : [
      { cases: 10_000, rounds: 60, rows: ['matching', 'similar', 'start', 'change'] },
      { cases: 100_000, rounds: 60, rows: ['matching', 'similar', 'posterior', 'look-up', 'start'] },
      { cases: 100_000, rounds: 60, rows: ['search'] },
      { cases: 1_000_000, rounds: 60, rows: ['matching', 'similar', 'start', 'change', 'memory'] },
    ];
const SERVING = quick ? { cases: 1_000, seconds: 3, questions: 50 } : { cases: 100_000, seconds: 15, questions: 200 };
const ACCEPTED = quick ? 60 : 400;

const folder = join(projectFolder, 'tests/output');
mkdirSync(folder, { recursive: true });
const wanted = values.only?.split(',');
const isWanted = (id: string) => wanted === undefined || wanted.includes(id);
const say = (text: string) => process.stderr.write(`${new Date().toISOString().slice(11, 19)} ${text}\n`);
const rows: Row[] = [];

/** A row that fails is said and left out: the others are worth having. */
async function attempt(what: string, measure: () => Promise<Row[]>): Promise<void> {
  try {
    rows.push(...(await measure()));
  } catch (error) {
    process.exitCode = 1;
    say(`${what} failed: ${error instanceof Error ? error.message : String(error)}`);
  }
}

for (const size of SIZES) {
  const ids = size.rows.filter(isWanted);
  if (ids.length === 0) continue;
  await attempt(`${size.cases} cases`, async () => {
    const child = fileURLToPath(new URL('./run/in-process.ts', import.meta.url));
    const args = ['--max-old-space-size=8000', '--import', 'tsx', child, String(size.cases), String(size.rounds), folder, ids.join(',')];
    return JSON.parse(execFileSync(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'], maxBuffer: 1e8 }).toString()) as Row[];
  });
}
if (isWanted('http')) await attempt('serving', () => servingRows(folder, { ...SERVING, say }));
if (isWanted('accept')) {
  say('accepting');
  await attempt('accepting', async () => [await acceptRow(folder, ACCEPTED)]);
}

const given = process.argv.slice(2).filter((word) => word !== '--write');
const report: Report = {
  at: new Date().toISOString(),
  command: ['npm run benchmark', ...(given.length > 0 ? ['--', ...given] : [])].join(' '),
  machine: machineWords(),
  node: process.versions.node,
  quick,
  rows,
};
writeFileSync(join(folder, 'benchmark.json'), `${JSON.stringify(report, null, 2)}\n`);
const page = pageOf(report);
writeFileSync(join(folder, 'benchmark.md'), page);
if (values.write) {
  const file = fileURLToPath(new URL('./README.md', import.meta.url));
  const text = readFileSync(file, 'utf8');
  const start = '<!-- measured -->\n';
  writeFileSync(file, `${text.slice(0, text.indexOf(start) + start.length)}\n${page}`);
}
process.stdout.write(page);
