import type { CasebookModel } from '../../shared/domain/casebook/casebook-model';
import type { Actor } from '../../shared/domain/can/can';
import { mayMove, type CaseEvent } from '../../shared/domain/submission/next-status';
import { AppError } from '../../shared/errors';
import type { CaseContent, CaseStatus } from '../../shared/schemas/case';
import type { DraftDocument, FieldProblem, FoundDetail } from '../../shared/schemas/submission';
import type { Db } from '../db';
import { findCase } from '../repositories/case-repository';
import { insertCases } from '../repositories/insert-cases';
import { keepRevision } from '../repositories/case-revisions';
import { findSameContent, replaceContent, replaceReviewNotes } from '../repositories/submission-contents';
import { deleteDraft, deleteDraftsOfCase } from '../repositories/submission-drafts';
import { findOwner, insertLink } from '../repositories/submission-links';
import { issueAfterKey } from './after-key';
import { lostPhotos, takePhotos } from './photo-hand-over';
import { moveCase, monthOf, ownMove } from './review/move-case';
import { checkDocument } from './submit-check';
import { inTransaction } from './submit-transaction';

/**
 * What came of submitting. `problems` and `details`: nothing was stored, and the form says where to look. `already`: this
 * very case is there; its id where the contributor may see it.
 */
export type SubmitOutcome =
  | { kind: 'submitted'; id: string; status: CaseStatus; key?: string }
  | { kind: 'already'; id: string | null; status: CaseStatus | null }
  | { kind: 'problems'; problems: FieldProblem[] }
  | { kind: 'details'; details: FoundDetail[] };

export type SubmitInput = {
  actor: Actor;
  draftId: string | null;
  document: DraftDocument;
  now: Date;
  newId: () => string;
  /** A fresh secret, for the key that reports what becomes of the repair later. */
  newKey: () => string;
};

/** Submits a new case for review. The same content a second time is the same submission. */
export async function submitCase(db: Db, model: CasebookModel, input: SubmitInput): Promise<SubmitOutcome> {
  const checked = checkDocument(model, input);
  if ('kind' in checked) return checked;
  return inTransaction(db, async (tx) => {
    const lost = await lostPhotos(tx, input);
    if (lost.length > 0) return { kind: 'problems', problems: lost };
    const there = await sameSubmission(tx, checked.content, input);
    if (there?.kind === 'submitted') await takePhotos(tx, there.id, input);
    if (there !== null) {
      if (input.draftId !== null) await deleteDraft(tx, input.actor.id, input.draftId);
      return there;
    }
    const id = input.newId();
    await insertCases(tx, [{ id, content: checked.content, status: 'draft' }], { newId: input.newId });
    await insertLink(tx, id, input.actor.id);
    await replaceReviewNotes(tx, id, checked.proposals, checked.marks);
    await takePhotos(tx, id, input);
    if (input.draftId !== null) await deleteDraft(tx, input.actor.id, input.draftId);
    const status = await moveCase(tx, { id, status: 'draft' }, ownMove('submit', input));
    return { kind: 'submitted', id, status, key: await issueAfterKey(tx, id, input.newKey()) };
  });
}

/** Submits a case anew after changes were asked for. Throws `submission-not-found` and `move-not-possible`. */
export async function resubmitCase(db: Db, model: CasebookModel, id: string, input: SubmitInput): Promise<SubmitOutcome> {
  const current = await getOwnCase(db, input.actor, id);
  requireMove(input.actor, 'submit', current.status);
  const checked = checkDocument(model, input);
  if ('kind' in checked) return checked;
  return inTransaction(db, async (tx) => {
    const { status, content } = await getOwnCase(tx, input.actor, id);
    requireMove(input.actor, 'submit', status);
    const lost = await lostPhotos(tx, input);
    if (lost.length > 0) return { kind: 'problems', problems: lost };
    const month = monthOf(input.now);
    await keepRevision(tx, id, { content, writer: 'contributor', month });
    await replaceContent(tx, id, status, checked.content);
    await replaceReviewNotes(tx, id, checked.proposals, checked.marks);
    await keepRevision(tx, id, { content: checked.content, writer: 'contributor', month });
    await takePhotos(tx, id, input);
    await deleteDraftsOfCase(tx, id);
    return { kind: 'submitted', id, status: await moveCase(tx, { id, status }, ownMove('submit', input)) };
  });
}

/** A case that this account has posted. Throws `submission-not-found` for any other, whether or not it exists. */
export async function getOwnCase(db: Db, actor: Actor, id: string) {
  const record = (await findOwner(db, id)) === actor.id ? await findCase(db, id) : null;
  if (record === null) throw new AppError('submission-not-found');
  return record;
}

/** Refuses an event that its owner may not cause in this status. */
export function requireMove(actor: Actor, event: CaseEvent, status: CaseStatus): void {
  if (!mayMove(actor, event, { status, ownerId: actor.id }))
    throw new AppError('move-not-possible', { detail: `It is ${status}.` });
}

/** The submission that this content already is. One that its owner withdrew is taken up again. */
async function sameSubmission(db: Db, content: CaseContent, input: SubmitInput): Promise<SubmitOutcome | null> {
  const same = await findSameContent(db, content);
  for (const { id, status } of same) {
    if ((await findOwner(db, id)) !== input.actor.id) continue;
    if (status !== 'withdrawn') return { kind: 'already', id, status };
    return { kind: 'submitted', id, status: await moveCase(db, { id, status }, ownMove('restore', input)) };
  }
  const published = same.find(({ status }) => status === 'accepted');
  if (published) return { kind: 'already', id: published.id, status: published.status };
  return same.length > 0 ? { kind: 'already', id: null, status: null } : null;
}
