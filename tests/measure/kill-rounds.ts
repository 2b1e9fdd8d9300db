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
import { faultsAfterKill, killRound, newAccount, searchFaults, statisticsFaults } from '../server/nothing-lost/kill-rounds';
import { prepareCasebook } from '../server/nothing-lost/prepare-casebook';

const [rounds = 200, firstSeed = 1] = process.argv.slice(2).map(Number);
/** Longest that the program works before it is killed, in milliseconds. */
const LONGEST = 1_500;
/** Rounds between two comparisons of statistics and search with new ones. */
const COMPARE_EVERY = 10;

const folder = mkdtempSync(join(tmpdir(), 'second-bench-kill-rounds-'));
const file = join(folder, 'casebook.db');
await applyMigrations(`file:${file}`);
await prepareCasebook(file);
const db = createDb(`file:${file}`);
const followed = await loadCasebook(db);
await db.$disconnect();

const random = createRandom(firstSeed);
const account = newAccount();
const faults: string[] = [];
let caught = 0;
for (let round = 1; round <= rounds; round++) {
  const afterMs = Math.round(random() * LONGEST);
  const { done, underWay } = await killRound(file, account, { seed: firstSeed * 10_000 + round, afterMs });
  if (underWay > 0) caught++;
  faults.push(...(await faultsAfterKill(file, account)));
  if (round % COMPARE_EVERY === 0 || round === rounds) {
    faults.push(...(await statisticsFaults(file, followed)), ...(await searchFaults(file, join(folder, `anew-${round}`))));
  }
  console.log(
    `${round} of ${rounds}: killed after ${afterMs} ms, ${done} done, ${underWay} under way; ${account.done} done and ${faults.length} faults so far`,
  );
}
for (const fault of faults) console.log(fault);
console.log(
  `${rounds} rounds, in ${caught} of them something was under way; ${account.done} changes said to be done on ${account.told.size} cases; ${faults.length} faults.`,
);
rmSync(folder, { recursive: true, force: true });
process.exitCode = faults.length === 0 ? 0 : 1;
