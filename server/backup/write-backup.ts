import { copyFile, mkdir, readdir, rename, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import {
  BACKUP_VERSION,
  type BackupFile,
  type BackupManifest,
  DATABASE_NAME,
  MANIFEST_NAME,
  PHOTO_FOLDER_NAME,
} from './backup-manifest';
import { fileDigest, settleOnDisk } from './file-digest';
import { inspectDatabase } from './inspect-database';

export type BackupSource = { databaseFile: string; photoFolder: string };
/**
 * Copies the database and the photos into a new folder while the site goes on working, opens the copy and checks it,
 * and writes down what it holds. The folder appears under its name only when all of this is done.
 *
 * @param folder absolute path of the folder to make; must not exist.
 * @throws Error in one sentence where the copy is not sound or cannot be written; nothing is left behind then.
 */
export async function writeBackup(source: BackupSource, folder: string, { now }: { now: Date }): Promise<BackupManifest> {
  const unfinished = `${folder}.unfinished`;
  await rm(unfinished, { recursive: true, force: true });
  // What is in it is as private as the database.
  await mkdir(join(unfinished, PHOTO_FOLDER_NAME), { recursive: true, mode: 0o700 });
  try {
    const copy = join(unfinished, DATABASE_NAME);
    // The database first: a photo that comes meanwhile is a file too many, which the next tidying removes.
    copyDatabase(source.databaseFile, copy);
    await copyPhotos(source.photoFolder, join(unfinished, PHOTO_FOLDER_NAME));
    const { faults, ...found } = inspectDatabase(copy);
    if (faults.length > 0) throw new Error(`The copy of the database is not sound: ${faults.join(' ')}`);
    const files = await listFiles(unfinished);
    const manifest: BackupManifest = { version: BACKUP_VERSION, writtenAt: now.toISOString(), ...found, files };
    await writeFile(join(unfinished, MANIFEST_NAME), `${JSON.stringify(manifest, null, 2)}\n`, { mode: 0o600 });
    for (const path of [...files.map((file) => file.path), MANIFEST_NAME]) await settleOnDisk(join(unfinished, path));
    await rename(unfinished, folder);
    await settleOnDisk(dirname(folder));
    return manifest;
  } catch (error) {
    await rm(unfinished, { recursive: true, force: true });
    throw error;
  }
}

/**
 * A consistent state, however much is written meanwhile. Not SQLite's step-by-step backup: that starts over whenever
 * another connection writes between two steps, and on a busy site would never end.
 */
function copyDatabase(from: string, to: string): void {
  const database = new Database(from, { readonly: true, fileMustExist: true });
  try {
    database.prepare('VACUUM INTO ?').run(to);
  } finally {
    database.close();
  }
}

/** Photos that are removed while they are copied are gone from the backup, too. */
async function copyPhotos(from: string, to: string): Promise<void> {
  for (const name of await namesIn(from)) {
    if (!name.endsWith('.webp')) continue;
    await copyFile(join(from, name), join(to, name)).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'ENOENT') throw error;
    });
  }
}

async function listFiles(folder: string): Promise<BackupFile[]> {
  const photos = (await namesIn(join(folder, PHOTO_FOLDER_NAME))).sort().map((name) => `${PHOTO_FOLDER_NAME}/${name}`);
  const files: BackupFile[] = [];
  for (const path of [DATABASE_NAME, ...photos]) files.push({ path, ...(await fileDigest(join(folder, path))) });
  return files;
}

async function namesIn(folder: string): Promise<string[]> {
  return readdir(folder).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return [];
    throw error;
  });
}
