import type { Actor } from '../../shared/domain/can/can';
import { draftOfContent } from '../../shared/domain/submission/draft-of-content';
import { isAtLeast } from '../../shared/domain/can/role';
import { moverOf } from '../../shared/domain/submission/next-status';
import { AppError } from '../../shared/errors';
import { type DraftDocument, PROPOSAL_KINDS, type ProposalKind } from '../../shared/schemas/submission';
import type { CaseRecord, CaseStatus } from '../../shared/schemas/case';
import { PHOTO_LIMITS } from '../../shared/schemas/photo';
import type { Db } from '../db';
import { copyPhotoFiles } from '../photos/photo-files';
import { forgetReporter } from '../repositories/after-repository';
import { deletePhotosOfCase, insertPhoto, listPhotosOfCase } from '../repositories/photo-repository';
import { listMarks, listProposals } from '../repositories/submission-contents';
import { deleteDraftsOfCase, findDraftOfCase, insertDraft } from '../repositories/submission-drafts';
import { deleteCase, deleteLink } from '../repositories/submission-links';
import { issueAfterKey } from './after-key';
import { moveCase, ownMove } from './review/move-case';
import { freezeConcentration } from './health/freeze-concentration';
import { getOwnCase, requireMove } from './submit-case';
import type { PhotoPlace } from './photo-tidy';
import { inTransaction } from './submit-transaction';

type ChangeInput = { actor: Actor; id: string; now: Date };

/** Takes a case back before it is published; its photos go for good. Throws `submission-not-found` and `move-not-possible`. */
export function withdrawCase(db: Db, { actor, id, now }: ChangeInput): Promise<CaseStatus> {
  return inTransaction(db, async (tx) => {
    const { status } = await getOwnCase(tx, actor, id);
    requireMove(actor, 'withdraw', status);
    await deleteDraftsOfCase(tx, id);
    await deletePhotosOfCase(tx, id);
    return moveCase(tx, { id, status }, ownMove('withdraw', { now }));
  });
}

/** Statuses at which a case is out of the way, and its owner may have it removed. */
export const REMOVABLE: readonly CaseStatus[] = ['withdrawn', 'declined'];

/** Removes a case that was withdrawn or declined, for good. Throws `submission-not-found` and `move-not-possible`. */
export function removeCase(db: Db, actor: Actor, id: string): Promise<void> {
  return inTransaction(db, async (tx) => {
    const { status } = await getOwnCase(tx, actor, id);
    if (!REMOVABLE.includes(status)) throw new AppError('move-not-possible', { detail: `It is ${status}.` });
    await deleteDraftsOfCase(tx, id);
    await deleteCase(tx, id);
  });
}

/** Opens a case for the changes that were asked for, and returns the id of the draft that holds them. */
export async function startChanges(place: PhotoPlace, input: ChangeInput & { newId: () => string }): Promise<string> {
  const { actor, id, now, newId } = input;
  return inTransaction(place.db, async (tx) => {
    const { status, content } = await getOwnCase(tx, actor, id);
    requireMove(actor, 'save', status);
    const there = await findDraftOfCase(tx, actor.id, id);
    if (there !== null) return there.id;
    const photos = (await listPhotosOfCase(tx, id)).map((photo) => ({ ...photo, from: photo.id, id: newId() }));
    const document = await draftOfStored(tx, { id, content, photos }, newId);
    const draft = { id: newId(), document: JSON.stringify(document), caseId: id, updatedAt: now };
    await insertDraft(tx, actor.id, draft);
    for (const { from, id: to, alt, width, height } of photos) {
      // The draft has photos of its own: discarded, it takes nothing from the case.
      await copyPhotoFiles(place.photoFolder, { from, to, now });
      await insertPhoto(tx, { id: to, draftId: draft.id, altText: alt, width, height }, PHOTO_LIMITS.count);
    }
    return draft.id;
  });
}

type Stored = Pick<CaseRecord, 'id' | 'content'> & { photos: readonly { id: string; alt: string }[] };

/** A stored case as the form shows it, with these photos, the words proposed with it and the details that were kept. */
export async function draftOfStored(db: Db, { id, content, photos }: Stored, newKey: () => string): Promise<DraftDocument> {
  const proposals = (await listProposals(db, id)).map((p) => ({ ...p, kind: kindOf(p.kind) }));
  const document = draftOfContent(content, proposals, newKey);
  document.photos = photos.map((photo) => ({ id: photo.id, alt: photo.alt }));
  // What was kept last time need not be settled again.
  const texts: Record<string, string> = { narrative: content.narrative, ...proposalTexts(proposals), ...altTexts(photos) };
  document.kept = (await listMarks(db, id)).map(({ field, start, end }) => (texts[field] ?? '').slice(start, end));
  return document;
}

/**
 * Cuts the link between a case and who posted it. It is final: nothing that is stored can restore it. Returns a new key
 * to report with, the only tie that is left, which whoever posted it holds alone. A moderator's own case that is still to
 * be decided keeps its link: without it, they could decide on it themselves.
 */
export function cutLink(db: Db, actor: Actor, id: string, newKey: () => string): Promise<{ key: string }> {
  return inTransaction(db, async (tx) => {
    const { status } = await getOwnCase(tx, actor, id);
    if (isAtLeast(actor.role, 'moderator') && moverOf(status, 'decline') !== null) {
      throw new AppError('move-not-possible', { detail: 'Withdraw it first: without the link you could review it yourself.' });
    }
    await freezeConcentration(tx, actor.id);
    if (!(await deleteLink(tx, id, actor.id))) throw new AppError('submission-not-found');
    await deleteDraftsOfCase(tx, id);
    await forgetReporter(tx, id, actor.id);
    return { key: await issueAfterKey(tx, id, newKey()) };
  });
}

function altTexts(photos: readonly { alt: string }[]): Record<string, string> {
  return Object.fromEntries(photos.map(({ alt }, i) => [`photos.${i}.alt`, alt]));
}

function proposalTexts(proposals: { word: string; meaning: string }[]): Record<string, string> {
  return Object.fromEntries(
    proposals.flatMap(({ word, meaning }, i) => [
      [`proposals.${i}.word`, word],
      [`proposals.${i}.meaning`, meaning],
    ]),
  );
}

function kindOf(kind: string): ProposalKind {
  const known = PROPOSAL_KINDS.find((other) => other === kind);
  if (known === undefined) throw new Error(`A stored proposal is of the unknown kind "${kind}".`);
  return known;
}
