import type { PhotoView } from '../../shared/schemas/photo';
import type { Db } from '../db';

type NewPhoto = { id: string; draftId: string; width: number; height: number };

const view = { id: true, altText: true, width: true, height: true } as const;
type Row = { id: string; altText: string; width: number; height: number };
const toView = ({ altText, ...row }: Row): PhotoView => ({ ...row, alt: altText });

/** Adds a photo to a draft, after those that it has. False where it has `most` already. */
export async function insertPhoto(db: Db, photo: NewPhoto & { altText?: string }, most: number): Promise<boolean> {
  const position = await db.photo.count({ where: { draftId: photo.draftId } });
  if (position >= most) return false;
  await db.photo.create({ data: { altText: '', ...photo, position }, select: { id: true } });
  return true;
}

/** The photos of a draft, in their order. */
export async function listPhotosOfDraft(db: Db, draftId: string): Promise<PhotoView[]> {
  const rows = await db.photo.findMany({ where: { draftId }, orderBy: [{ position: 'asc' }, { id: 'asc' }], select: view });
  return rows.map(toView);
}

/** The photos of a case, in their order. */
export async function listPhotosOfCase(db: Db, caseId: string): Promise<PhotoView[]> {
  const rows = await db.photo.findMany({ where: { caseId }, orderBy: [{ position: 'asc' }, { id: 'asc' }], select: view });
  return rows.map(toView);
}

/** Those of the named cases that have photos. */
export async function findCasesWithPhotos(db: Db, caseIds: readonly string[]): Promise<Set<string>> {
  const rows = await db.photo.findMany({ where: { caseId: { in: [...caseIds] } }, distinct: ['caseId'], select: { caseId: true } });
  return new Set(rows.flatMap((row) => row.caseId ?? []));
}

/** Hands photos of a draft over to a case, in the given order and in place of those that it had; run it in a transaction. */
export async function movePhotosToCase(
  db: Db,
  caseId: string,
  draftId: string,
  photos: readonly { id: string; alt: string }[],
): Promise<void> {
  await db.photo.deleteMany({ where: { caseId } });
  for (const [position, { id, alt }] of photos.entries()) {
    await db.photo.updateMany({ where: { id, draftId }, data: { draftId: null, caseId, position, altText: alt } });
  }
}

/** Removes the photos of a case. */
export async function deletePhotosOfCase(db: Db, caseId: string): Promise<void> {
  await db.photo.deleteMany({ where: { caseId } });
}

/** Removes a photo of a draft; one that is not there is as good as removed. */
export async function deletePhotoOfDraft(db: Db, draftId: string, id: string): Promise<void> {
  await db.photo.deleteMany({ where: { id, draftId } });
}

/** Where a photo belongs: a draft with its owner, or a case with its status and whoever posted it (null: nobody any more). */
export type PhotoPlace = { caseStatus: string | null; ownerId: string | null };

/** Where a photo belongs, or null where there is none. */
export async function findPhotoPlace(db: Db, id: string): Promise<PhotoPlace | null> {
  const row = await db.photo.findUnique({
    where: { id },
    select: {
      draft: { select: { ownerId: true } },
      case: { select: { status: true, postedBy: { select: { userId: true } } } },
    },
  });
  if (row === null) return null;
  return { caseStatus: row.case?.status ?? null, ownerId: row.draft?.ownerId ?? row.case?.postedBy?.userId ?? null };
}

/** Ids of every photo in the drafts and the linked cases of an account. */
export async function listPhotoIdsOf(db: Db, userId: string): Promise<string[]> {
  const rows = await db.photo.findMany({
    where: { OR: [{ draft: { ownerId: userId } }, { case: { postedBy: { userId } } }] },
    select: { id: true },
  });
  return rows.map((row) => row.id);
}

/** Ids of every photo that is stored; of the given ones, where some are given. */
export async function listPhotoIds(db: Db, among?: readonly string[]): Promise<string[]> {
  const rows = await db.photo.findMany({ where: among ? { id: { in: [...among] } } : {}, select: { id: true } });
  return rows.map((row) => row.id);
}
