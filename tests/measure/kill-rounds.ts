// Kills a working program again and again, and looks each time whether anything that it had said to be done is lost.
//
// Run as: npx tsx tests/measure/kill-rounds.ts [rounds, 200] [seed, 1]
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { applyMigrations } from '../../prisma/migrations';
import { loadCasebook } from '../../server/casebook/load-casebook';
import { createDb } from '../../server/db';
import { createRandom } from '../../shared/stats/random';
import { faultsAfterKill, searchFaults, statisticsFaults } from '../server/nothing-lost/faults-after-kill';
import { bundleWorker, killRound, newAccount } from '../server/nothing-lost/kill-rounds';
import { prepareCasebook } from '../server/nothing-lost/prepare-casebook';

const [rounds = 200, firstSeed = 1] = process.argv.slice(2).map(Number);
/** Longest that the program works before it is killed, in milliseconds. */
const LONGEST = 1_200;
/** Rounds on one database; the next ones begin with a new one, so that looking through it stays cheap. */
const ROUNDS_OF_ONE = 25;
/** Rounds between two comparisons of statistics and search with new ones. */
const COMPARE_EVERY = 3;

const folder = mkdtempSync(join(tmpdir(), 'second-bench-kill-rounds-'));
const worker = await bundleWorker();
const random = createRandom(firstSeed);
const started = Date.now();
const sum = { done: 0, keys: 0, caught: 0 };
const interrupted = new Map<string, number>();
const faults: string[] = [];

/** Some rounds on a database of their own. */
async function roundsOnOne(first: number, last: number): Promise<void> {
  const file = join(folder, `casebook-${first}.db`);
  await applyMigrations(`file:${file}`);
  await prepareCasebook(file);
  const db = createDb(`file:${file}`);
  const followed = await loadCasebook(db);
  await db.$disconnect();
  const account = newAccount();
  for (let round = first; round <= last; round++) {
    const afterMs = Math.round(random() * LONGEST);
    const { done, underWay } = await killRound(file, account, { worker: worker.file, seed: firstSeed * 10_000 + round, afterMs });
    if (underWay.length > 0) sum.caught++;
    for (const op of underWay) interrupted.set(op, (interrupted.get(op) ?? 0) + 1);
    const found = await faultsAfterKill(file, account);
    if (round % COMPARE_EVERY === 0 || round === last) {
      found.push(...(await statisticsFaults(file, followed)), ...(await searchFaults(file, join(folder, `anew-${round}`))));
    }
    faults.push(...found);
    console.log(
      `${round} of ${rounds}: killed after ${afterMs} ms, ${done} done, ${underWay.length} under way; ${faults.length} faults so far`,
    );
    for (const fault of found) console.log(`  ${fault}`);
  }
  sum.done += account.done;
  sum.keys += account.told.size;
}

try {
  for (let first = 1; first <= rounds; first += ROUNDS_OF_ONE)
    await roundsOnOne(first, Math.min(rounds, first + ROUNDS_OF_ONE - 1));
} finally {
  worker.remove();
  rmSync(folder, { recursive: true, force: true });
}
console.log(
  `Interrupted: ${[...interrupted]
    .sort(([, a], [, b]) => b - a)
    .map(([op, times]) => `${op} ${times}`)
    .join(', ')}.`,
);
console.log(
  `${rounds} rounds in ${((Date.now() - started) / 60_000).toFixed(1)} minutes, in ${sum.caught} of them something was under way; ${sum.done} changes said to be done on ${sum.keys} cases, photos and words; ${faults.length} faults.`,
);
process.exitCode = faults.length === 0 ? 0 : 1;
