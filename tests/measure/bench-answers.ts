// Processor time of what the bench reckons with every entry, from a snapshot: `npx tsx tests/measure/bench-answers.ts file:./data/demo.db [device]`.
// Processor time rather than time on the clock: it hardly depends on what else the machine does.
import { gzipSync } from 'node:zlib';
import { loadCasebook } from '../../server/casebook/load-casebook';
import { createDb } from '../../server/db';
import { answerBench, benchQuestion, planBench, withIntervals } from '../../shared/domain/bench/answer-bench';
import { modelFromSnapshot, prepareWords, takeSnapshot } from '../../shared/domain/snapshot/casebook-snapshot';
import type { Finding } from '../../shared/schemas/finding';
import { planOptionsSchema } from '../../shared/schemas/plan';

const [, , url = 'file:./data/demo.db', device = 'quellbrook-8-rev-a'] = process.argv;
const db = createDb(url);
const { model: whole } = await loadCasebook(db);
await db.$disconnect();

/** Processor milliseconds of a piece of work. */
function cpu<T>(work: () => T): { value: T; ms: number } {
  const before = process.cpuUsage();
  const value = work();
  const { user, system } = process.cpuUsage(before);
  return { value, ms: (user + system) / 1000 };
}
const middle = (list: number[]) => [...list].sort((a, b) => a - b)[list.length >> 1] as number;

const { vocabulary, catalogue } = whole.coding;
const snapshot = JSON.parse(JSON.stringify(takeSnapshot(whole, device)));
const size = (value: unknown) => `${JSON.stringify(value).length} bytes, ${gzipSync(JSON.stringify(value)).length} compressed`;
console.log(`snapshot of ${device}: ${size(snapshot)}; vocabulary and catalogue: ${size({ vocabulary, catalogue })}`);
const words = cpu(() => prepareWords({ vocabulary, catalogue }));
const opened = cpu(() => modelFromSnapshot(words.value, snapshot));
console.log(`opening: words ${words.ms.toFixed(0)} ms, snapshot ${opened.ms.toFixed(0)} ms`);
const model = opened.value;
console.log(`reading words: first ${cpu(() => model.read('grey screen, clock present')).ms.toFixed(0)} ms, then ${cpu(() => model.read('no sound, rail 4.6 V')).ms.toFixed(1)} ms`);

const entries: Finding[] = [
  { kind: 'symptom', id: 'grey-screen', value: 'present' },
  { kind: 'check', id: 'supply-apart', value: vocabulary.checks.find((c) => c.slug === 'supply-apart')?.workingOutcome ?? '' },
  { kind: 'check', id: 'rails-short-test', value: 'not-shorted' },
  { kind: 'check', id: 'rail-5v', value: vocabulary.checks.find((c) => c.slug === 'rail-5v')?.workingOutcome ?? '' },
  ...vocabulary.checks
    .filter((c) => c.stage <= 2 && !['supply-apart', 'rails-short-test', 'rail-5v'].includes(c.slug) && c.categories.includes('home-computer'))
    .slice(0, 8)
    .map((c): Finding => ({ kind: 'check', id: c.slug, value: c.workingOutcome })),
];
const times = { causes: [] as number[], intervals: [] as number[], plan: [] as number[] };
for (let pass = 0; pass < 3; pass += 1) {
  for (let count = 1; count <= entries.length; count += 1) {
    const question = { device, complete: false, findings: entries.slice(0, count) };
    const coded = cpu(() => benchQuestion(model, question));
    const quick = cpu(() => answerBench(model, coded.value));
    times.causes.push(coded.ms + quick.ms);
    times.intervals.push(cpu(() => withIntervals(model, coded.value, quick.value)).ms);
    times.plan.push(cpu(() => planBench(model, question, planOptionsSchema.parse({}))).ms);
  }
}
for (const [name, list] of Object.entries(times)) {
  console.log(`${name}: first ${(list[0] as number).toFixed(1)} ms, middle ${middle(list).toFixed(1)} ms, worst ${Math.max(...list).toFixed(1)} ms per entry`);
}
