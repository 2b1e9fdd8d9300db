import { mkdtempSync, mkdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { forgetCasebook, getCasebook } from '../../../server/casebook/current-casebook';
import { createDb } from '../../../server/db';
import { migrationsFolderIn, readiness } from '../../../server/watching/readiness';
import { appendCaseChanges } from '../../../server/repositories/case-change-repository';
import { testDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { smallCases } from '../fixtures/small-cases';

afterEach(forgetCasebook);

const migrations = migrationsFolderIn(process.cwd());
const oks = ({ checks }: Awaited<ReturnType<typeof readiness>>) => Object.fromEntries(checks.map(({ name, ok }) => [name, ok]));

describe('readiness', () => {
  it('is given once the casebook is in memory', async () => {
    const { db, url } = testDatabase();
    await fillDatabase(db, smallCases(7));
    const before = await readiness(db, url, migrations);
    expect(before.ready).toBe(false);
    expect(oks(before)).toEqual({ database: true, migrations: true, casebook: false, disk: true });
    await getCasebook(db);
    const after = await readiness(db, url, migrations);
    expect(after).toMatchObject({ ready: true });
    expect(after.checks.find(({ name }) => name === 'casebook')?.detail).toBe('7 cases.');
  });

  it('is refused where the casebook is far behind what is published', async () => {
    const { db, url } = testDatabase();
    await fillDatabase(db, smallCases(7));
    await getCasebook(db);
    await appendCaseChanges(
      db,
      Array.from({ length: 201 }, (_, i) => `case-${i}`),
    );
    expect(oks(await readiness(db, url, migrations))).toMatchObject({ casebook: true, changes: false });
  });

  it('is refused where a migration is not applied', async () => {
    const { db, url } = testDatabase();
    const folder = mkdtempSync(join(tmpdir(), 'migrations-'));
    mkdirSync(join(folder, '20990101000000_later'));
    const { checks } = await readiness(db, url, folder);
    expect(checks.find(({ name }) => name === 'migrations')).toMatchObject({ ok: false, detail: '1 are not applied.' });
  });

  it('names no path where the database cannot be read', async () => {
    const file = join(mkdtempSync(join(tmpdir(), 'broken-')), 'broken.db');
    writeFileSync(file, 'this is no database'.repeat(100));
    const answer = await readiness(createDb(`file:${file}`), `file:${file}`, migrations);
    expect(oks(answer)).toMatchObject({ database: false, migrations: false });
    expect(JSON.stringify(answer)).not.toContain('broken');
  });
});
