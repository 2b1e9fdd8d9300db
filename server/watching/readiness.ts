import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { unapplied } from '../../prisma/migration-state';
import { casebookState } from '../casebook/current-casebook';
import type { Db } from '../db';
import { diskState } from '../storage/disk-state';
import { findNewestChange } from '../repositories/case-change-repository';

/** One thing that has to hold before the site can answer. */
export type ReadinessCheck = { name: 'database' | 'migrations' | 'casebook' | 'changes' | 'disk'; ok: boolean; detail: string };
/** `ready`: it can answer questions. `stores`: it can take posts, too; with a full or read-only disk it still answers. */
export type Readiness = { ready: boolean; stores: boolean; checks: ReadinessCheck[] };

/** Changes that the casebook may be behind: they are taken up with the next question. */
const BEHIND_MOST = 200;

/**
 * Whether the site can answer questions: the database can be read, every migration is applied, the casebook is in
 * memory, and it is up to date with what is published. Whether the disk can be written is said beside that.
 *
 * @param databaseUrl `file:` address of the database.
 * @param migrationsFolder absolute path of the project's migrations.
 */
export async function readiness(
  db: Db,
  databaseUrl: string,
  migrationsFolder: string,
  now: () => number = Date.now,
): Promise<Readiness> {
  const checks = [
    await check('database', () => readsDatabase(db)),
    await check('migrations', () => migrated(databaseUrl, migrationsFolder)),
  ];
  const state = casebookState();
  checks.push(await check('casebook', async () => loadedOr(state)));
  if (state.kind === 'loaded') checks.push(await check('changes', () => upToDate(db, state.changeSeq)));
  const ready = checks.every(({ ok }) => ok);
  const disk = await check('disk', () => takesWrites(databaseUrl, now));
  return { ready, stores: ready && disk.ok, checks: [...checks, disk] };
}

type Finding = { ok: boolean; detail: string };

async function check(name: ReadinessCheck['name'], look: () => Promise<Finding>): Promise<ReadinessCheck> {
  try {
    return { name, ...(await look()) };
  } catch {
    // What went wrong may name paths of the machine: it goes to the log of whoever asks the database next.
    return { name, ok: false, detail: 'It cannot be read.' };
  }
}

async function readsDatabase(db: Db): Promise<Finding> {
  await db.$queryRaw`SELECT 1`;
  return { ok: true, detail: 'It answers.' };
}

async function migrated(databaseUrl: string, folder: string): Promise<Finding> {
  const names = readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort();
  const waiting = unapplied(databaseUrl, names);
  return { ok: waiting.length === 0, detail: waiting.length === 0 ? 'All are applied.' : `${waiting.length} are not applied.` };
}

async function loadedOr(state: ReturnType<typeof casebookState>): Promise<Finding> {
  return state.kind === 'loaded'
    ? { ok: true, detail: `${state.cases} cases.` }
    : { ok: false, detail: state.kind === 'loading' ? 'It is being loaded.' : 'It is not loaded yet.' };
}

async function takesWrites(databaseUrl: string, now: () => number): Promise<Finding> {
  const fault = await diskState(databaseUrl.replace(/^file:/, ''), now);
  if (fault === null) return { ok: true, detail: 'It can be written.' };
  return { ok: false, detail: fault === 'disk-full' ? 'It is full: make room on it.' : 'It cannot be written: make it writable.' };
}

async function upToDate(db: Db, changeSeq: number): Promise<Finding> {
  const behind = (await findNewestChange(db)) - changeSeq;
  return { ok: behind <= BEHIND_MOST, detail: behind === 0 ? 'None is waiting.' : `${behind} are waiting.` };
}

/** Where the migrations stand on this machine, seen from the project folder. */
export const migrationsFolderIn = (projectFolder: string): string => join(projectFolder, 'prisma', 'migrations');
