import { copyFile, mkdir, readdir, readFile, rename, rm, utimes, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { caseIdSchema } from '../../shared/schemas/case';
import { PHOTO_SIZES, type PhotoSize } from '../../shared/schemas/photo';
import type { EncodedPhoto } from './encode-photo';

const SIZES = Object.keys(PHOTO_SIZES) as PhotoSize[];

/** Where the photos of a database stand: beside it, and never below a folder that is served. */
export const photoFolderOf = (databaseFile: string): string => `${databaseFile.replace(/\.db$/, '')}-photos`;

const pathOf = (folder: string, id: string, size: PhotoSize) => join(folder, `${caseIdSchema.parse(id)}-${size}.webp`);

/** Keeps the two files of a photo. Their times are the month's first: a file is no diary of who was here when. */
export async function writePhotoFiles(folder: string, id: string, photo: EncodedPhoto, now: Date): Promise<void> {
  await mkdir(folder, { recursive: true, mode: 0o700 });
  for (const size of SIZES) {
    const path = pathOf(folder, id, size);
    try {
      await writeFile(`${path}.part`, photo[size], { mode: 0o600 });
      await rename(`${path}.part`, path);
    } catch (error) {
      // What is left of it takes room that there is none of.
      await rm(`${path}.part`, { force: true }).catch(() => {});
      throw error;
    }
    await setToMonth(path, now);
  }
}

/** Keeps the files of one photo a second time, under another id. */
export async function copyPhotoFiles(folder: string, { from, to, now }: { from: string; to: string; now: Date }): Promise<void> {
  for (const size of SIZES) {
    await copyFile(pathOf(folder, from, size), pathOf(folder, to, size));
    await setToMonth(pathOf(folder, to, size), now);
  }
}

/** The bytes of a file of a photo; null where it is not there. */
export async function readPhotoFile(folder: string, id: string, size: PhotoSize): Promise<Uint8Array<ArrayBuffer> | null> {
  try {
    return new Uint8Array(await readFile(pathOf(folder, id, size)));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  }
}

/** Removes the files of these photos; those that are not there are as good as removed. */
export async function removePhotoFiles(folder: string, ids: readonly string[]): Promise<void> {
  for (const id of ids) for (const size of SIZES) await rm(pathOf(folder, id, size), { force: true });
}

/**
 * Removes every file that belongs to none of the given photos: what a crash between the database and the folder left.
 * @returns how many were removed
 */
export async function removeOrphans(folder: string, ids: ReadonlySet<string>): Promise<number> {
  const names = await readdir(folder).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return [];
    throw error;
  });
  const known = new Set([...ids].flatMap((id) => SIZES.map((size) => `${id}-${size}.webp`)));
  const orphans = names.filter((name) => !known.has(name));
  for (const name of orphans) await rm(join(folder, name), { force: true });
  return orphans.length;
}

function setToMonth(path: string, now: Date): Promise<void> {
  const month = new Date(Date.UTC(now.getUTCFullYear(), now.getUTCMonth(), 1));
  return utimes(path, month, month);
}
