// Ten minutes of mixed traffic on the built site with the demo world, on loopback: pages, procedures, drafts, posts and acceptances.
// Prints the times of each kind of request, what failed, how times, memory and the event loop of the server went from the first minute
// to the last, and one line of verdict. Ends with 1 where a request failed.
//
// Run as: npx tsx tests/measure/load/run-load.ts [minutes, 10] [connections, 16]
import { randomBytes } from 'node:crypto';
import { createHistogram, type RecordableHistogram } from 'node:perf_hooks';
import { preparePages } from '../../../server/start/prepare.mjs';
import { createRandom } from '../../../shared/stats/random';
import { caseIdFrom } from '../../../server/ids';
import { demoDatabase } from '../../browser/harness/demo-database';
import { startServer } from '../../browser/harness/start-server';
import { tellBlocks, watchLoop } from './loop-blocks';
import { formOf, mutate, newSynonym, nextAsk, signIn } from './traffic';

const [minutes = 10, connections = 16] = process.argv.slice(2).map(Number);
/** Writes are paced: the site's own limits per account hold here, too. */
const WRITE_EVERY_MS = 150_000 / 60;
const SAMPLE_EVERY_MS = 5_000;

const token = randomBytes(24).toString('hex');
process.env.METRICS_TOKEN = token;
await preparePages();
const database = await demoDatabase();
const watched = watchLoop();
process.env.LOOP_PROBE_FILE = watched.file;
process.env.NODE_OPTIONS = [process.env.NODE_OPTIONS, watched.nodeOptions].join(' ').trim();
const { url, stop } = await startServer(database.file);

const times = new Map<string, RecordableHistogram>();
/** Of all requests, by the minute in which they were answered. */
const byMinute: RecordableHistogram[] = [];
let started = Number.POSITIVE_INFINITY;
const failures = new Map<string, number>();
let answered = 0;

async function timed(name: string, ask: () => Promise<Response>): Promise<string> {
  const start = performance.now();
  let failure: string | null = null;
  let body = '';
  try {
    const response = await ask();
    body = await response.text();
    if (!response.ok) failure = `${name}: ${response.status} ${body.slice(0, 120)}`;
  } catch (error) {
    failure = `${name}: ${String(error)}`;
  }
  const histogram = times.get(name) ?? createHistogram();
  times.set(name, histogram);
  const took = Math.max(1, Math.round((performance.now() - start) * 1000));
  histogram.record(took);
  const minute = Math.max(0, Math.floor((Date.now() - started) / 60_000));
  byMinute[minute] ??= createHistogram();
  byMinute[minute]?.record(took);
  answered++;
  if (failure !== null) failures.set(failure, (failures.get(failure) ?? 0) + 1);
  return body;
}

let end = 0;

async function reader(lane: number): Promise<void> {
  const random = createRandom(1000 + lane);
  while (Date.now() < end) {
    const { name, path } = nextAsk(random);
    await timed(name, () => fetch(`${url}${path}`));
  }
}

/** One contributor and one moderator: saves a draft, submits it, accepts it, and now and then changes the words. */
async function writer(): Promise<void> {
  const contributor = await signIn(url, 'contributor');
  const moderator = await signIn(url, 'moderator');
  for (let number = 1; Date.now() < end; number++) {
    const document = formOf(number);
    const id = caseIdFrom(randomBytes(10));
    await timed('save a draft', () => mutate(url, 'submission.saveDraft', { id, isNew: true, document }, contributor));
    // Thirty an hour and account may be submitted.
    if (number % 60 === 1) {
      const sent = await timed('submit', () => mutate(url, 'submission.submit', { draftId: id, document }, contributor));
      const submitted = (JSON.parse(sent) as { result?: { data?: { id?: string } } }).result?.data?.id;
      if (submitted !== undefined) await accept(submitted, moderator);
    } else await timed('discard a draft', () => mutate(url, 'submission.discardDraft', { id }, contributor));
    if (number % 60 === 31) await timed('change the words', () => mutate(url, 'word.change', newSynonym(number), moderator));
    await new Promise((resolve) => setTimeout(resolve, WRITE_EVERY_MS));
  }
}

async function accept(id: string, moderator: string): Promise<void> {
  const input = encodeURIComponent(JSON.stringify({ id }));
  const text = await timed('review', () =>
    fetch(`${url}/api/trpc/review.item?input=${input}`, { headers: { cookie: moderator } }),
  );
  const seen = (JSON.parse(text) as { result?: { data?: { seen?: string } } }).result?.data?.seen;
  await timed('accept', () => mutate(url, 'review.accept', { id, seen }, moderator));
}

type Sample = { minute: number; residentMb: number; heapMb: number; lagMs: number };

async function sample(): Promise<Sample> {
  const text = await (await fetch(`${url}/metrics`, { headers: { authorization: `Bearer ${token}` } })).text();
  const read = (name: string) => Number(new RegExp(`^${name} (.*)$`, 'm').exec(text)?.[1] ?? Number.NaN);
  return {
    minute: (Date.now() - started) / 60_000,
    residentMb: read('process_resident_memory_bytes') / 2 ** 20,
    heapMb: read('nodejs_heap_size_used_bytes') / 2 ** 20,
    lagMs: read('nodejs_eventloop_lag_max_seconds') * 1000,
  };
}

try {
  // The casebook is loaded, and every page once compiled, before anything is timed.
  await fetch(`${url}/readyz`);
  for (let i = 0; i < 60; i++) await fetch(`${url}${nextAsk(createRandom(i)).path}`).then((r) => r.text());
  // The longest delay is counted from one look to the next: what the start took is looked at here, and left out.
  await sample();
  started = Date.now();
  end = started + minutes * 60_000;
  const samples: Sample[] = [];
  const sampler = setInterval(
    () =>
      void sample()
        .then((s) => samples.push(s))
        .catch(() => {}),
    SAMPLE_EVERY_MS,
  );
  const progress = setInterval(() => console.log(`${answered} answered, ${failures.size} kinds of failure`), 30_000);
  await Promise.all([...Array.from({ length: connections - 1 }, (_, lane) => reader(lane)), writer()]);
  clearInterval(sampler);
  clearInterval(progress);
  const ended = Date.now();
  const seconds = (ended - started) / 1000;
  console.log(
    `\n${answered} requests in ${seconds.toFixed(0)} s at ${connections} connections: ${(answered / seconds).toFixed(1)} a second`,
  );
  const ms = (microseconds: number) => (microseconds / 1000).toFixed(1);
  console.log('\n| request | count | median ms | p95 ms | p99 ms | longest ms |\n|---|---|---|---|---|---|');
  for (const [name, h] of [...times].sort())
    console.log(
      `| ${name} | ${h.count} | ${ms(h.percentile(50))} | ${ms(h.percentile(95))} | ${ms(h.percentile(99))} | ${ms(h.max)} |`,
    );
  console.log('\n| minute | resident MB | heap MB | event loop, longest ms |\n|---|---|---|---|');
  for (const s of samples.filter((_, i) => i % 6 === 5 || i === samples.length - 1))
    console.log(`| ${s.minute.toFixed(1)} | ${s.residentMb.toFixed(0)} | ${s.heapMb.toFixed(0)} | ${s.lagMs.toFixed(0)} |`);
  console.log('\n| minute | requests | median ms | p95 ms | p99 ms |\n|---|---|---|---|---|');
  for (const [minute, h] of byMinute.entries()) {
    if (h === undefined) continue;
    console.log(`| ${minute + 1} | ${h.count} | ${ms(h.percentile(50))} | ${ms(h.percentile(95))} | ${ms(h.percentile(99))} |`);
  }
  const { told, longestOwn } = tellBlocks(watched.file, { from: started, to: ended, every: SAMPLE_EVERY_MS });
  console.log(`\n${told}`);
  console.log(failures.size === 0 ? 'No request failed.' : 'Failures:');
  for (const [failure, count] of failures) console.log(`${count} x ${failure}`);
  // The last minute that is a whole one.
  const [first, last] = [byMinute[0], byMinute[Math.max(0, Math.floor(minutes) - 1)]];
  const of = (inMinute: (s: Sample) => boolean) => samples.filter(inMinute).map((s) => s.residentMb);
  const mean = (list: number[]) => list.reduce((sum, x) => sum + x, 0) / Math.max(1, list.length);
  const [early, late] = [mean(of((s) => s.minute < 1)), mean(of((s) => s.minute >= minutes - 1))];
  const failed = [...failures.values()].reduce((sum, count) => sum + count, 0);
  console.log(
    `\nVerdict: ${failed} of ${answered} requests failed; p99 ${ms(first?.percentile(99) ?? 0)} ms in the first minute and ${ms(last?.percentile(99) ?? 0)} ms in the last; resident ${early.toFixed(0)} MB and ${late.toFixed(0)} MB; event loop blocked ${Math.max(0, ...samples.map((s) => s.lagMs)).toFixed(0)} ms at the longest, ${longestOwn.toFixed(0)} ms by the program's own work.`,
  );
  process.exitCode = failed === 0 ? 0 : 1;
} finally {
  await stop();
  database.remove();
  watched.remove();
}
