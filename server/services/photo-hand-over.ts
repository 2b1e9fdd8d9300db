import type { Actor } from '../../shared/domain/can/can';
import type { DraftDocument, FieldProblem } from '../../shared/schemas/submission';
import type { Db } from '../db';
import { listPhotosOfDraft, movePhotosToCase } from '../repositories/photo-repository';
import { findDraft } from '../repositories/submission-drafts';

type Form = { actor: Actor; draftId: string | null; document: DraftDocument };

/** Photos that the form names and that its draft does not hold (any more). */
export async function lostPhotos(db: Db, { actor, draftId, document }: Form): Promise<FieldProblem[]> {
  if (document.photos.length === 0) return [];
  const draft = draftId === null ? null : await findDraft(db, actor.id, draftId);
  const held = draft === null ? [] : await listPhotosOfDraft(db, draft.id);
  return document.photos.flatMap(({ id }, i) =>
    held.some((photo) => photo.id === id)
      ? []
      : [{ field: `photos.${i}`, reason: 'This photo is not there any more. Take it out, or add it again.' }],
  );
}

/** Hands the photos of the draft over to the case, in place of those that it had. */
export async function takePhotos(db: Db, caseId: string, { draftId, document }: Form): Promise<void> {
  const photos = document.photos.map(({ id, alt }) => ({ id, alt: alt.trim() }));
  await movePhotosToCase(db, caseId, draftId ?? '', photos);
}
