import { cp, readdir, rename, rm, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { type BackupManifest, DATABASE_NAME, PHOTO_FOLDER_NAME } from './backup-manifest';
import { verifyBackup } from './read-backup';
import type { BackupSource } from './write-backup';

export type RestoreOptions = {
  now: Date;
  /** Set what is there aside, instead of refusing. */
  replace: boolean;
};

export type Restored = {
  manifest: BackupManifest;
  /** Where the database that was there stands now; null where there was none. */
  setAside: string | null;
  /** Ids of keys destroyed since the backup: these cuts and deletions are to be repeated in what was restored. */
  destroyed: string[];
};

/** What SQLite keeps beside a database file that is in use. */
const BESIDE = ['', '-wal', '-shm'];

/**
 * Verifies a backup and puts it in the place of the database and its photos. What was there is set aside under another
 * name, never removed. Throws an Error in one sentence, and changes nothing, where the backup is not sound, where
 * something is there and `replace` is not set, or where a program is using it.
 */
export async function restoreBackup(folder: string, target: BackupSource, { now, replace }: RestoreOptions): Promise<Restored> {
  const manifest = await verifyBackup(folder);
  const isThere = await exists(target.databaseFile);
  if (isThere && !replace) {
    throw new Error(`There is a database already. Add --replace: what is there is then set aside, not removed.`);
  }
  if (isThere) requireUnused(target.databaseFile);
  const destroyed = await destroyedSince(folder, isThere ? target.databaseFile : null);
  // Copied beside the place first: the change itself is a few renames.
  const incoming = `${target.databaseFile}.incoming`;
  const incomingPhotos = `${target.photoFolder}.incoming`;
  await rm(incoming, { force: true });
  await rm(incomingPhotos, { recursive: true, force: true });
  await cp(join(folder, DATABASE_NAME), incoming);
  await cp(join(folder, PHOTO_FOLDER_NAME), incomingPhotos, { recursive: true });
  const suffix = `.before-restore-${now.toISOString().replace(/[:.]/g, '-')}`;
  if (isThere) await setAside(target, suffix);
  await rename(incomingPhotos, target.photoFolder);
  await rename(incoming, target.databaseFile);
  return { manifest, setAside: isThere ? `${target.databaseFile}${suffix}` : null, destroyed };
}

async function setAside(target: BackupSource, suffix: string): Promise<void> {
  for (const beside of BESIDE) {
    const file = `${target.databaseFile}${beside}`;
    // SQLite finds the log of a database by its name.
    if (await exists(file)) await rename(file, `${target.databaseFile}${suffix}${beside}`);
  }
  if (await exists(target.photoFolder)) await rename(target.photoFolder, `${target.photoFolder}${suffix}`);
}

/** Every other connection to a database in WAL mode holds a shared lock: an exclusive one can be had only without them. */
function requireUnused(file: string): void {
  const database = new Database(file, { timeout: 0 });
  try {
    database.pragma('locking_mode = EXCLUSIVE');
    database.exec('BEGIN EXCLUSIVE; COMMIT');
  } catch (error) {
    if ((error as { code?: string }).code === 'SQLITE_BUSY') {
      throw new Error('A program is using the database. Stop the site first, then restore.', { cause: error });
    }
    // One that cannot be opened is being replaced for that very reason.
  } finally {
    database.close();
  }
}

/** From the database that is replaced, and from every backup beside this one: a newer one may know of more cuts. */
async function destroyedSince(folder: string, replaced: string | null): Promise<string[]> {
  const parent = dirname(folder);
  const siblings = (await readdir(parent)).map((name) => join(parent, name, DATABASE_NAME));
  const ids = new Set<string>();
  for (const file of replaced === null ? siblings : [replaced, ...siblings]) for (const id of destroyedIn(file)) ids.add(id);
  return [...ids].sort();
}

function destroyedIn(file: string): string[] {
  let database: Database.Database | null = null;
  try {
    database = new Database(file, { readonly: true, fileMustExist: true });
    return database.prepare('SELECT id FROM DestroyedKey').pluck().all() as string[];
  } catch {
    // Not a database, or one from before there was a log: it knows of no cuts.
    return [];
  } finally {
    database?.close();
  }
}

async function exists(path: string): Promise<boolean> {
  return (await stat(path).catch(() => null)) !== null;
}
