import { existsSync, readdirSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, describe, expect, it } from 'vitest';
import { writeBackup } from '../../../server/backup/write-backup';
import { forgetCasebook, getCasebook } from '../../../server/casebook/current-casebook';
import { writeSnapshot } from '../../../server/casebook/model-snapshot';
import { runProgram } from '../../../server/cli/program';
import { createDb } from '../../../server/db';
import { readEnv } from '../../../server/env';
import { randomCaseId } from '../../../server/ids';
import { photoFolderOf } from '../../../server/photos/photo-files';
import { streamLog } from '../../../server/repositories/log-repository';
import { openSearch } from '../../../server/search/open-search';
import { verifyLog } from '../../../server/services/log/verify-log';
import { forgetSubmitLimits } from '../../../server/services/submit-limits';
import { storageFaultOf } from '../../../server/storage/storage-fault';
import { operatorWords } from '../../../server/storage/operator-words';
import { createCaller } from '../../../server/trpc/root';
import { migrationsFolderIn, readiness } from '../../../server/watching/readiness';
import type { Actor } from '../../../shared/domain/can/can';
import { ERROR_TEXTS } from '../../../shared/errors';
import { takeConsoleErrors } from '../../setup/take-console-errors';
import { fillDatabase } from '../fixtures/filled-database';
import { smallCases } from '../fixtures/small-cases';
import { makePhoto } from '../photos/make-photo';
import { fullForm } from '../submission/posting';
import { ownPage } from '../trpc/test-request';
import { mayMount, smallDisk } from './small-disk';

const poster: Actor = { id: 'poster', role: 'contributor' };
const moderator: Actor = { id: 'moderator', role: 'moderator' };
afterEach(forgetCasebook);

/** The site on a database file, as two people use it. */
async function siteOn(file: string) {
  forgetSubmitLimits();
  const db = createDb(`file:${file}`);
  const search = openSearch(db, readEnv({ DATABASE_URL: `file:${file}` }, '/'));
  const photoFolder = photoFolderOf(file);
  const as = (actor: Actor | null) =>
    createCaller({ ...ownPage, db, casebook: () => getCasebook(db), search: () => search, photoFolder, actor });
  const close = async () => {
    await search.close();
    await db.$disconnect();
  };
  const ready = () => readiness(db, `file:${file}`, migrationsFolderIn(process.cwd()));
  return { db, search, photoFolder, as, close, ready };
}

async function prepare(file: string): Promise<void> {
  const db = createDb(`file:${file}`);
  await fillDatabase(db, smallCases(30));
  const at = new Date(0);
  for (const { id, role } of [poster, moderator])
    await db.user.create({
      data: { id, name: id, username: id, email: `${id}@bench.invalid`, role, createdAt: at, updatedAt: at },
    });
  await db.$disconnect();
}

/** Looks up, searches and reads pages: what has to go on. */
async function reads({ as }: Awaited<ReturnType<typeof siteOn>>) {
  const visitor = as(null);
  const answer = await visitor.lookup.ask({ text: 'grey screen' });
  const found = await visitor.search.cases({ text: 'cured' });
  const overview = await visitor.casebook.overview();
  return { causes: answer.causes.length, found: found.total, cases: overview.cases };
}

const refused = (code: 'disk-full' | 'disk-read-only') => ({ code: 'SERVICE_UNAVAILABLE', message: ERROR_TEXTS[code] });

/** Every row that there is, counted on a connection of its own. */
function rowsIn(file: string): Record<string, number> {
  const database = new Database(file);
  const tables = database.prepare("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name").pluck().all() as string[];
  const counts = Object.fromEntries(
    tables.map((name) => [name, database.prepare(`SELECT count(*) FROM "${name}"`).pluck().get() as number]),
  );
  expect(database.pragma('integrity_check', { simple: true })).toBe('ok');
  database.close();
  return counts;
}

async function commandLine(site: Awaited<ReturnType<typeof siteOn>>, ...args: string[]) {
  let said = '';
  const io = {
    db: () => site.db,
    search: () => site.search,
    out: () => {},
    err: (text: string) => {
      said += text;
    },
    now: () => new Date('2026-11-25'),
    newId: randomCaseId,
    readSecret: async () => '',
    actor: 'command line',
  };
  return { code: await runProgram(io, args), said };
}

const needsMount = mayMount.ok ? '' : ` (skipped: ${mayMount.why})`;

describe.skipIf(!mayMount.ok)(`a disk that is full${needsMount}`, () => {
  it('stores nothing and says so, goes on answering, and stores again once there is room', { timeout: 60_000 }, async () => {
    const disk = smallDisk(12);
    await prepare(disk.file);
    const site = await siteOn(disk.file);
    const { as, db, ready } = site;
    const before = await reads(site);
    const draftId = randomCaseId();
    const document = fullForm();
    await as(poster).submission.saveDraft({ id: draftId, isNew: true, document });
    const sent = await as(poster).submission.submit({
      draftId: null,
      document: fullForm({ narrative: 'A second one, for the moderators.' }),
    });
    if (sent.kind !== 'submitted') throw new Error(JSON.stringify(sent));
    const { seen } = await as(moderator).review.item({ id: sent.id });
    expect(await ready()).toMatchObject({ ready: true, stores: true });

    const person = { name: 'second-person', password: 'quiet kettle on the ninth shelf' };
    expect((await as(null).account.signUp(person)).status).toBe('done');

    disk.fill();
    // The log of writes holds some pages already: they are used up first.
    const long = fullForm({ narrative: 'No room. '.repeat(400) });
    const saves = async () => {
      for (let i = 0; i < 400; i++)
        await as(poster).submission.saveDraft({ id: draftId, isNew: false, document: { ...long, soakMinutes: String(i) } });
    };
    await expect(saves()).rejects.toMatchObject(refused('disk-full'));
    const rows = rowsIn(disk.file);
    const photos = () => (existsSync(site.photoFolder) ? readdirSync(site.photoFolder) : []);

    await expect(as(poster).submission.submit({ draftId, document: long })).rejects.toMatchObject(refused('disk-full'));
    await expect(as(moderator).review.accept({ id: sent.id, seen })).rejects.toMatchObject(refused('disk-full'));
    await expect(
      as(poster).photo.add({ draftId, bytes: await makePhoto('png', { width: 60, height: 40, plain: true }) }),
    ).rejects.toMatchObject(refused('disk-full'));
    await expect(as(null).account.signUp({ ...person, name: 'newcomer' })).rejects.toMatchObject(refused('disk-full'));
    await expect(as(null).account.signIn(person)).rejects.toMatchObject(refused('disk-full'));
    const { model, changeSeq } = await getCasebook(db);
    expect(storageFaultOf(await writeSnapshot(db, { model, changeSeq }).catch((error) => error))).toBe('disk-full');
    expect(await commandLine(site, 'reindex')).toEqual({
      code: 1,
      said: expect.stringMatching(/^The disk is full, .*Make room.*\n$/),
    });

    const backup = await writeBackup({ databaseFile: disk.file, photoFolder: site.photoFolder }, `${disk.file}-backup`, {
      now: new Date(),
    }).catch((error) => error);
    expect(storageFaultOf(backup)).toBe('disk-full');

    // Nothing is half there.
    expect(photos()).toEqual([]);
    expect(rowsIn(disk.file)).toEqual(rows);
    expect(readdirSync(dirname(disk.file)).filter((name) => /\.new$|\.part$|room|backup/.test(name))).toEqual([]);
    expect((await verifyLog(streamLog(db))).intact).toBe(true);
    expect(await reads(site)).toEqual(before);
    const told = await readiness(db, `file:${disk.file}`, migrationsFolderIn(process.cwd()), () => Date.now() + 10_000);
    expect(told).toMatchObject({ ready: true, stores: false });
    expect(told.checks.find(({ name }) => name === 'disk')).toMatchObject({ ok: false, detail: expect.stringContaining('full') });

    disk.makeRoom();
    await as(moderator).review.accept({ id: sent.id, seen });
    await as(poster).photo.add({ draftId, bytes: await makePhoto('png', { width: 60, height: 40, plain: true }) });
    expect(photos()).toHaveLength(2);
    expect((await as(poster).submission.submit({ draftId, document })).kind).toBe('submitted');
    // Seen by others: nothing hangs in a transaction that was never ended.
    expect(rowsIn(disk.file).CaseFile).toBe((rows.CaseFile ?? 0) + 1);
    expect(await reads(site)).toMatchObject({ cases: before.cases + 1 });
    // What the sign-in library said of it.
    expect(takeConsoleErrors().every((line) => /disk is full/.test(line))).toBe(true);
    await site.close();
  });
});

describe.skipIf(!mayMount.ok)(`a disk that can only be read${needsMount}`, () => {
  it('says that nothing was stored, and goes on answering', { timeout: 60_000 }, async () => {
    const disk = smallDisk(12);
    await prepare(disk.file);
    // As with a disk that turns read-only under a running site: what SQLite keeps beside the database is there.
    const holder = await siteOn(disk.file);
    await reads(holder);
    forgetCasebook();
    const site = await siteOn(disk.readOnlyFile());
    expect(await reads(site)).toMatchObject({ cases: 30, found: 27 });
    const { as } = site;
    await expect(
      as(poster).submission.saveDraft({ id: randomCaseId(), isNew: true, document: fullForm() }),
    ).rejects.toMatchObject(refused('disk-read-only'));
    await expect(as(poster).submission.submit({ draftId: null, document: fullForm() })).rejects.toMatchObject(
      refused('disk-read-only'),
    );
    expect(await site.ready()).toMatchObject({ ready: true, stores: false });
    expect(await commandLine(site, 'reindex')).toEqual({
      code: 1,
      said: expect.stringMatching(/^The database or its folder cannot be written, .*\n$/),
    });
    expect(await reads(site)).toMatchObject({ cases: 30, found: 27 });
    await site.close();
    await holder.close();
    // Closed as it should be, and then read-only: SQLite cannot open it (what it keeps beside it would have to be made anew).
    const later = await siteOn(disk.readOnlyFile()).catch((error) => error as Error);
    expect(later).toBeInstanceOf(Error);
    expect(operatorWords(later)).toMatch(/cannot be written/);
  });
});
