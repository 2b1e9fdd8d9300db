import type { Db } from '../db';
import { removeOrphans, removePhotoFiles } from '../photos/photo-files';
import { listPhotoIds, listPhotoIdsOf } from '../repositories/photo-repository';

export type PhotoPlace = { db: Db; photoFolder: string };

/**
 * Does something with an account's drafts or cases, and then removes the files of every photo that went with it. Rows go
 * first, in their own transaction: a crash in between leaves files that nobody can ask for, until the next start sweeps them.
 */
export async function tidyPhotos<T>({ db, photoFolder }: PhotoPlace, userId: string, run: () => Promise<T>): Promise<T> {
  const before = await listPhotoIdsOf(db, userId);
  try {
    return await run();
  } finally {
    const left = before.length > 0 ? new Set(await listPhotoIds(db, before)) : new Set();
    await removePhotoFiles(
      photoFolder,
      before.filter((id) => !left.has(id)),
    );
  }
}

/** Removes the files that belong to no photo. Only while nothing else adds photos: before the server starts. */
export async function sweepPhotos({ db, photoFolder }: PhotoPlace): Promise<number> {
  return removeOrphans(photoFolder, new Set(await listPhotoIds(db)));
}
