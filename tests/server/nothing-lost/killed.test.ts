import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, inject, it, onTestFinished } from 'vitest';
import { loadCasebook } from '../../../server/casebook/load-casebook';
import { createDb } from '../../../server/db';
import { faultsAfterKill, searchFaults, statisticsFaults } from './faults-after-kill';
import { type Account, bundleWorker, killRound, newAccount } from './kill-rounds';
import { prepareCasebook } from './prepare-casebook';

/** Of everything that the worker does, something was said to be done: a case, a photo, a word, the index, and some decisions. */
const didEverything = ({ told, done }: Account) =>
  done >= 12 &&
  [/^[a-z2-7]{16}$/, /^photo:/, /^synonym:/, /^index$/].every((kind) =>
    [...told].some(([key, said]) => kind.test(key) && said !== null),
  );

// The long form, of 200 rounds, is tests/measure/kill-rounds.ts.
it('loses nothing that was said to be done when a working program is killed', { timeout: 120_000 }, async () => {
  const folder = mkdtempSync(join(tmpdir(), 'second-bench-killed-'));
  const worker = await bundleWorker();
  onTestFinished(() => {
    worker.remove();
    rmSync(folder, { recursive: true, force: true });
  });
  const file = join(folder, 'casebook.db');
  copyFileSync(inject('templateDatabase'), file);
  await prepareCasebook(file);
  const db = createDb(`file:${file}`);
  const followed = await loadCasebook(db);
  await db.$disconnect();
  const account = newAccount();
  for (const [seed, afterMs, enough] of [
    [101, 300, didEverything],
    [102, 250, undefined],
    [103, 600, undefined],
  ] as const) {
    await killRound(file, account, { worker: worker.file, seed, afterMs, ...(enough && { enough }) });
    expect(await faultsAfterKill(file, account)).toEqual([]);
  }
  expect(await statisticsFaults(file, followed)).toEqual([]);
  expect(await searchFaults(file, join(folder, 'anew'))).toEqual([]);
});
