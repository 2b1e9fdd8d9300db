import { once } from 'node:events';
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { backupName, pruneBackups } from '../../../server/backup/prune-backups';
import { verifyBackup } from '../../../server/backup/read-backup';
import { restoreBackup } from '../../../server/backup/restore-backup';
import { writeBackup } from '../../../server/backup/write-backup';
import { createDb } from '../../../server/db';
import { countCases, findCase } from '../../../server/repositories/case-repository';
import { insertCases } from '../../../server/repositories/insert-cases';
import { openTestDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { plainCase } from '../fixtures/plain-case';
import { smallCases } from '../fixtures/small-cases';

const now = new Date('2026-11-25T03:00:00Z');
const made: (() => unknown)[] = [];
function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'second-bench-backup-'));
  made.push(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
const photo = (folder: string) => join(folder, 'abcdef-large.webp');

/** A casebook with photos, and a finished backup of it. */
async function backedUp() {
  const { db, url, close } = openTestDatabase();
  made.push(close);
  const cases = smallCases(30);
  await fillDatabase(db, cases);
  const parent = newFolder();
  const photoFolder = join(parent, 'x-photos');
  mkdirSync(photoFolder);
  writeFileSync(photo(photoFolder), 'the bytes of a photo');
  const source = { databaseFile: url.replace('file:', ''), photoFolder };
  const folder = join(parent, backupName(now));
  const manifest = await writeBackup(source, folder, { now });
  return { db, cases, parent, source, folder, manifest };
}

let shared: Awaited<ReturnType<typeof backedUp>>;
beforeAll(async () => {
  shared = await backedUp();
});
afterAll(async () => {
  for (const undo of made) await undo();
});

/** A copy of the shared backup, to be damaged. */
function copyOfBackup(): string {
  const folder = join(newFolder(), 'copy');
  cpSync(shared.folder, folder, { recursive: true });
  return folder;
}

/** Writes two rows in a transaction, again and again, on a connection of its own. */
const WRITES_PAIRS = `
  const { parentPort, workerData } = require('node:worker_threads');
  const Database = require('better-sqlite3');
  const database = new Database(workerData);
  const insert = database.prepare("INSERT INTO CaseChange (caseId) VALUES ('x')");
  const pair = database.transaction(() => { insert.run(); insert.run(); });
  for (let i = 0; i < 100000; i++) { pair(); if (i === 20) parentPort.postMessage('writing'); }
`;

describe('writeBackup', () => {
  it('says what it holds, and what it holds can be read', async () => {
    const { manifest, folder } = shared;
    expect(manifest).toMatchObject({ version: 1, writtenAt: now.toISOString(), cases: 30, accepted: 30 });
    expect(manifest.files.map((file) => file.path)).toEqual(['second-bench.db', 'photos/abcdef-large.webp']);
    expect(await verifyBackup(folder)).toEqual(manifest);
    // For its owner's eyes alone.
    expect(statSync(folder).mode & 0o077).toBe(0);
    expect(readdirSync(folder).sort()).toEqual(['manifest.json', 'photos', 'second-bench.db']);
  });

  it('holds one consistent state of a database that another program writes to all the while', async () => {
    const { source } = await backedUp();
    const writer = new Worker(WRITES_PAIRS, { eval: true, workerData: source.databaseFile });
    await once(writer, 'message');
    const folder = join(newFolder(), 'busy');
    const manifest = await writeBackup(source, folder, { now });
    await writer.terminate();
    expect(await verifyBackup(folder)).toEqual(manifest);
    const copy = new Database(join(folder, 'second-bench.db'), { readonly: true });
    // Two rows are written in each transaction: half of one would be an odd number.
    const pairs = copy.prepare('SELECT count(*) FROM CaseChange').pluck().get() as number;
    copy.close();
    expect(pairs % 2).toBe(0);
    expect(pairs).toBeGreaterThan(30);
  });

  it('leaves nothing behind where it fails', async () => {
    const parent = newFolder();
    const missing = { databaseFile: join(parent, 'none.db'), photoFolder: join(parent, 'none') };
    await expect(writeBackup(missing, join(parent, 'x'), { now })).rejects.toThrow();
    expect(readdirSync(parent)).toEqual([]);
  });
});

describe('verifyBackup', () => {
  it.each([
    [
      'a changed byte of the database',
      (f: string) => flip(join(f, 'second-bench.db')),
      /second-bench\.db was changed or damaged/,
    ],
    ['a shortened database', (f: string) => truncateSync(join(f, 'second-bench.db'), 8192), /changed or damaged/],
    ['a missing photo', (f: string) => rmSync(photo(join(f, 'photos'))), /lacks its file photos\/abcdef-large\.webp/],
    ['a missing description', (f: string) => rmSync(join(f, 'manifest.json')), /There is no backup in/],
    ['a description that is no JSON', (f: string) => writeFileSync(join(f, 'manifest.json'), '{'), /is not JSON/],
    ['a later version', (f: string) => edit(f, { version: 2 }), /version: This program reads backups of version 1 alone/],
    ['another number of cases', (f: string) => edit(f, { cases: 31 }), /holds something else than it says/],
    [
      'a file outside the backup',
      (f: string) => edit(f, { files: [{ path: '../x', bytes: 0, sha256: '0'.repeat(64) }] }),
      /files\.0\.path/,
    ],
  ])('refuses %s', async (_, damage, sentence) => {
    const folder = copyOfBackup();
    damage(folder);
    await expect(verifyBackup(folder)).rejects.toThrow(sentence);
  });
});

describe('restoreBackup', () => {
  it('brings back what was there, photos too, and sets aside what came later', async () => {
    const { cases, folder, parent } = shared;
    const target = { databaseFile: join(parent, 'site.db'), photoFolder: join(parent, 'site-photos') };
    const first = await restoreBackup(folder, target, { now, replace: false });
    expect(first.setAside).toBeNull();
    const db = createDb(`file:${target.databaseFile}`);
    await insertCases(db, [plainCase(99)], { newId: () => 'later' });
    await db.$disconnect();
    const second = await restoreBackup(folder, target, { now, replace: true });
    const restored = createDb(`file:${target.databaseFile}`);
    expect(await countCases(restored)).toBe(30);
    const one = cases[7] as (typeof cases)[number];
    expect(await findCase(restored, one.id)).toEqual(one);
    expect(readFileSync(photo(target.photoFolder), 'utf8')).toBe('the bytes of a photo');
    const aside = createDb(`file:${second.setAside}`);
    expect(await countCases(aside)).toBe(31);
    await aside.$disconnect();
    await restored.$disconnect();
  });

  it('refuses, and changes nothing, where a database is there and was not given up', async () => {
    const { folder, source } = shared;
    await expect(restoreBackup(folder, source, { now, replace: false })).rejects.toThrow(/Add --replace/);
  });

  it('refuses while a program is using the database', async () => {
    const { folder, source, db } = shared;
    expect(await countCases(db)).toBe(30);
    await expect(restoreBackup(folder, source, { now, replace: true })).rejects.toThrow(/Stop the site first/);
    expect(await countCases(db)).toBe(30);
  });
});

describe('pruneBackups', () => {
  it('removes the oldest finished backups, and nothing else', async () => {
    const parent = newFolder();
    const names = [1, 2, 3].map((day) => backupName(new Date(Date.UTC(2026, 10, day))));
    expect(names[0]).toBe('second-bench-20261101T000000Z');
    for (const name of [...names, 'notes', 'second-bench-20200101T000000Z']) mkdirSync(join(parent, name));
    for (const name of names) writeFileSync(join(parent, name, 'manifest.json'), '{}');
    expect(await pruneBackups(parent, 2)).toEqual([names[0]]);
    expect(readdirSync(parent).sort()).toEqual(['notes', 'second-bench-20200101T000000Z', names[1], names[2]]);
  });
});

function flip(file: string): void {
  const bytes = readFileSync(file);
  bytes[5000] = (bytes[5000] ?? 0) ^ 1;
  writeFileSync(file, bytes);
}

function edit(folder: string, change: object): void {
  const file = join(folder, 'manifest.json');
  writeFileSync(file, JSON.stringify({ ...JSON.parse(readFileSync(file, 'utf8')), ...change }));
}
