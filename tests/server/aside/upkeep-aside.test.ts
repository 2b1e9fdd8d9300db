import { existsSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { upkeepAside } from '../../../server/aside/upkeep-aside';
import { loadCasebook } from '../../../server/casebook/load-casebook';
import { snapshotFile } from '../../../server/casebook/model-snapshot';
import { projectFolder } from '../../../server/start/project-folder.mjs';
import { buildUpkeepProgram } from '../../../server/start/build-upkeep-program.mjs';
import { openLocalSearch } from '../../../server/search/open-search';
import { searchQuerySchema } from '../../../shared/schemas/search';
import { serialiseCounts } from '../../../shared/stats/counts-serialised';
import { takeConsoleErrors } from '../../setup/take-console-errors';
import { testDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { smallCases } from '../fixtures/small-cases';

// Below the project, so that it finds the packages.
const built = join(projectFolder, `tests/output/upkeep-program-${process.pid}.mjs`);
const broken = join(projectFolder, `tests/output/upkeep-broken-${process.pid}.mjs`);

beforeAll(() => buildUpkeepProgram(built));
afterAll(() => {
  for (const file of [built, broken]) rmSync(file, { force: true });
});

describe('upkeep in a program of its own', () => {
  it('leaves a snapshot from which the casebook is as it is from the database, while this one is free', async () => {
    const { db } = testDatabase();
    await fillDatabase(db, smallCases(1_000));
    const before = await loadCasebook(db);
    expect(before.snapshotSeq).toBeNull();
    let turns = 0;
    const turning = setInterval(() => (turns += 1), 1);
    expect(await upkeepAside(db, 'snapshot', built)).toBe(true);
    clearInterval(turning);
    expect(turns).toBeGreaterThan(10);
    const after = await loadCasebook(db);
    expect(after.snapshotSeq).toBe(before.changeSeq);
    expect(serialiseCounts(after.model.counts)).toEqual(serialiseCounts(before.model.counts));
    expect(after.model.entries.size).toBe(1_000);
  });

  it('makes the full text, which another connection then searches', async () => {
    const { db, url } = testDatabase();
    await fillDatabase(db, smallCases(30));
    const file = url.slice('file:'.length);
    expect(await upkeepAside(db, 'search-index', built)).toBe(true);
    expect(existsSync(`${file}-search`)).toBe(true);
    const search = openLocalSearch(db, file);
    expect((await search.search(searchQuerySchema.parse({}))).total).toBe(30);
    await search.close();
  });

  it('says that it was not done where there is no such program, and where it fails or is killed', async () => {
    const { db } = testDatabase();
    await fillDatabase(db, smallCases(3));
    expect(await upkeepAside(db, 'snapshot', join(projectFolder, 'missing.mjs'))).toBe(false);
    for (const source of ['process.exit(3);', 'process.kill(process.pid, "SIGKILL"); setInterval(() => {}, 1000);']) {
      writeFileSync(broken, source);
      expect(await upkeepAside(db, 'snapshot', broken)).toBe(false);
      expect(takeConsoleErrors().join()).toContain('is done without it');
    }
    expect(await upkeepAside(db, 'snapshot', built)).toBe(true);
    // Of so few cases none is written.
    expect(existsSync((await snapshotFile(db)) ?? '')).toBe(false);
  });
});
