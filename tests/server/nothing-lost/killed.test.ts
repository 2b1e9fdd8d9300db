import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, inject, it, onTestFinished } from 'vitest';
import { loadCasebook } from '../../../server/casebook/load-casebook';
import { createDb } from '../../../server/db';
import { faultsAfterKill, searchFaults, statisticsFaults } from './faults-after-kill';
import { bundleWorker, killRound, newAccount } from './kill-rounds';
import { prepareCasebook } from './prepare-casebook';

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
  for (const [seed, afterMs] of [
    [101, 900],
    [102, 250],
    [103, 600],
  ] as const) {
    await killRound(file, account, { worker: worker.file, seed, afterMs });
    expect(await faultsAfterKill(file, account)).toEqual([]);
  }
  expect(account.done).toBeGreaterThan(10);
  // Of everything that the worker does, something was said to be done: a case, a photo, a word, the index.
  for (const kind of [/^[a-z2-7]{16}$/, /^photo:/, /^synonym:/, /^index$/]) {
    expect(
      [...account.told].some(([key, told]) => kind.test(key) && told !== null),
      String(kind),
    ).toBe(true);
  }
  expect(await statisticsFaults(file, followed)).toEqual([]);
  expect(await searchFaults(file, join(folder, 'anew'))).toEqual([]);
});
