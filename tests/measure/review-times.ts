// Times of the moderators' pages with many cases, beside the plainest page of the site, on the built site over loopback.
//
// Run as: npx tsx tests/measure/review-times.ts [waiting, 500] [accepted, 20000] [tries, 25]
import { demoWorld } from '../../seed/demo-world';
import { createDb } from '../../server/db';
import { randomCaseId } from '../../server/ids';
import { countCases } from '../../server/repositories/case-repository';
import { insertCases } from '../../server/repositories/insert-cases';
import { enterQueue } from '../../server/repositories/waiting-cases';
import { preparePages } from '../../server/start/prepare.mjs';
import type { CaseStatus } from '../../shared/schemas/case';
import { demoDatabase } from '../browser/harness/demo-database';
import { startServer } from '../browser/harness/start-server';
import { signIn } from './load/traffic';

const [waiting = 500, accepted = 20_000, tries = 25] = process.argv.slice(2).map(Number);
const SEED = 777;

await preparePages();
const database = await demoDatabase();
const db = createDb(`file:${database.file}`);
await add('accepted', accepted - (await countCases(db, 'accepted')), SEED);
const added = await add('submitted', waiting - (await countCases(db, 'submitted')), SEED + 1);
await enterQueue(db, added, new Date());
const ids = (await db.waitingCase.findMany({ select: { caseId: true }, take: tries })).map((row) => row.caseId);
console.log(`${await countCases(db, 'accepted')} accepted, ${await db.waitingCase.count()} waiting.`);
await db.$disconnect();

async function add(status: CaseStatus, count: number, seed: number): Promise<string[]> {
  if (count <= 0) return [];
  const cases = demoWorld.drawCases(seed, count).map(({ content }) => ({ id: randomCaseId(), content, status }));
  await db.$transaction((tx) => insertCases(tx, cases, { newId: randomCaseId }), { timeout: 600_000, maxWait: 30_000 });
  return cases.map(({ id }) => id);
}

const { url, stop } = await startServer(database.file);
try {
  while (!(await fetch(`${url}/readyz`)).ok) await new Promise((resolve) => setTimeout(resolve, 500));
  const cookie = await signIn(url, 'moderator');
  const time = async (path: string): Promise<number> => {
    const start = performance.now();
    const response = await fetch(`${url}${path}`, { headers: { cookie } });
    await response.arrayBuffer();
    if (!response.ok) throw new Error(`${path} answered ${response.status}.`);
    return performance.now() - start;
  };
  const pages: [string, (i: number) => string][] = [
    ['the plainest page, /safety', () => '/safety'],
    ['a page of the queue', (i) => (i % 2 === 0 ? '/review' : '/review?order=newest')],
    ['a review page', (i) => `/review/${ids[i % ids.length]}`],
  ];
  const medians: number[] = [];
  for (const [name, path] of pages) {
    for (let i = 0; i < 3; i++) await time(path(i));
    const times: number[] = [];
    for (let i = 0; i < tries; i++) times.push(await time(path(i)));
    times.sort((a, b) => a - b);
    const at = (share: number) => times[Math.min(times.length - 1, Math.floor(share * times.length))] as number;
    medians.push(at(0.5));
    console.log(
      `${name}: median ${at(0.5).toFixed(0)} ms, p95 ${at(0.95).toFixed(0)} ms, ${((medians.at(-1) as number) / (medians[0] as number)).toFixed(1)} times the plainest`,
    );
  }
} finally {
  await stop();
  database.remove();
}
