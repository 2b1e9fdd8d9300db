import { can, type Actor } from '../../shared/domain/can/can';
import { AppError } from '../../shared/errors';
import { PHOTO_LIMITS, type PhotoOutcome, type PhotoSize, type PhotoView } from '../../shared/schemas/photo';
import { encodePhoto } from '../photos/encode-photo';
import { readPhotoFile, removePhotoFiles, writePhotoFiles } from '../photos/photo-files';
import { deletePhotoOfDraft, findPhotoPlace, insertPhoto, listPhotosOfCase } from '../repositories/photo-repository';
import { findDraft } from '../repositories/submission-drafts';
import { findCaseStanding } from '../repositories/case-standing';
import type { Db } from '../db';
import type { PhotoPlace } from './photo-tidy';
import { inTransaction } from './submit-transaction';

type AddInput = { actor: Actor; draftId: string; bytes: Uint8Array; now: Date; newId: () => string };

/** One picture at a time: each may unfold into some hundred megabytes. */
let line: Promise<unknown> = Promise.resolve();

/** Adds a photo to a draft of one's own. Throws `draft-not-found`. */
export async function addPhoto({ db, photoFolder }: PhotoPlace, input: AddInput): Promise<PhotoOutcome> {
  const { actor, draftId, bytes, now, newId } = input;
  await requireDraft(db, actor, draftId);
  const turn = line.then(() => encodePhoto(bytes));
  line = turn.catch(() => {});
  const photo = await turn;
  if ('reason' in photo) return { kind: 'refused', reason: photo.reason };
  const id = newId();
  try {
    await writePhotoFiles(photoFolder, id, photo, now);
    const { width, height } = photo;
    const isIn = await inTransaction(db, async (tx) => {
      await requireDraft(tx, actor, draftId);
      return insertPhoto(tx, { id, draftId, width, height }, PHOTO_LIMITS.count);
    });
    if (isIn) return { kind: 'added', id };
  } catch (error) {
    await removePhotoFiles(photoFolder, [id]);
    throw error;
  }
  await removePhotoFiles(photoFolder, [id]);
  return { kind: 'refused', reason: `A case takes ${PHOTO_LIMITS.count} photos. Take one out first.` };
}

/** Takes a photo out of a draft of one's own. Throws `draft-not-found`. */
export async function removePhoto(db: Db, actor: Actor, { draftId, id }: { draftId: string; id: string }): Promise<void> {
  await requireDraft(db, actor, draftId);
  await deletePhotoOfDraft(db, draftId, id);
}

/** The photos of a case that who asks may see. Throws `case-not-found` for any other. */
export async function getPhotosOfCase(db: Db, actor: Actor | null, caseId: string): Promise<PhotoView[]> {
  const standing = await findCaseStanding(db, caseId);
  if (standing === null || !(standing.status === 'accepted' || can(actor, 'submission.see', { ownerId: standing.ownerId })))
    throw new AppError('case-not-found');
  return listPhotosOfCase(db, caseId);
}

/** A file of a photo, for whom it is: everybody where the case is published. */
export type OpenedPhoto = { bytes: Uint8Array<ArrayBuffer>; isPublic: boolean };

/** Opens a photo for who asks; null where there is none, or it is not for them. */
export async function openPhoto(
  { db, photoFolder }: PhotoPlace,
  actor: Actor | null,
  { id, size }: { id: string; size: PhotoSize },
): Promise<OpenedPhoto | null> {
  const place = await findPhotoPlace(db, id);
  if (place === null) return null;
  const { caseStatus, ownerId } = place;
  const isPublic = caseStatus === 'accepted';
  // A draft is its owner's alone; what was sent is for the moderators, too.
  const mayOpen = isPublic || (actor !== null && ownerId === actor.id) || (caseStatus !== null && can(actor, 'submission.see', { ownerId }));
  const bytes = mayOpen ? await readPhotoFile(photoFolder, id, size) : null;
  return bytes && { bytes, isPublic };
}

async function requireDraft(db: Db, actor: Actor, draftId: string): Promise<void> {
  if ((await findDraft(db, actor.id, draftId)) === null) throw new AppError('draft-not-found');
}
