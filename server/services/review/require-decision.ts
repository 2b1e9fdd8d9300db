import { type Actor, can } from '../../../shared/domain/can/can';
import { type CaseEvent, mayMove } from '../../../shared/domain/submission/next-status';
import { AppError } from '../../../shared/errors';
import type { CaseRecord } from '../../../shared/schemas/case';
import { contentHash } from '../../content-hash';
import type { Db } from '../../db';
import { findCase } from '../../repositories/case-repository';
import { findOwner } from '../../repositories/submission-links';
import { findWaitingPlace } from '../../repositories/waiting-cases';

/** What every decision starts from: who decides, on which case, and what content they saw. */
export type DecisionInput = { actor: Actor; id: string; seen: string; now: Date };

/**
 * The case that is decided on, where this moderator may cause the event now: it is not their own, nobody else looks at
 * it, and it is still what they saw. Call it inside the transaction of the decision.
 * Throws `review-not-found`, `own-submission`, `move-not-possible`, `looked-at-by-other`, `changed-meanwhile`.
 */
export async function requireDecision(db: Db, event: CaseEvent, { actor, id, seen, now }: DecisionInput): Promise<CaseRecord> {
  const record = await requireForeign(db, actor, id);
  if (!mayMove(actor, event, { status: record.status, ownerId: null })) {
    throw new AppError('move-not-possible', { detail: `It is ${record.status}.` });
  }
  const place = await findWaitingPlace(db, id);
  if (place?.claimedBy != null && place.claimedBy !== actor.id && place.claimedUntil !== null && place.claimedUntil > now) {
    throw new AppError('looked-at-by-other');
  }
  if (contentHash(record.content) !== seen) throw new AppError('changed-meanwhile');
  return record;
}

/** A case that is not this moderator's own. Throws `review-not-found`, `own-submission`, `not-allowed`. */
export async function requireForeign(db: Db, actor: Actor, id: string): Promise<CaseRecord> {
  const record = await findCase(db, id);
  if (record === null || record.status === 'draft') throw new AppError('review-not-found');
  const ownerId = await findOwner(db, id);
  if (ownerId === actor.id) throw new AppError('own-submission');
  if (!can(actor, 'submission.decide', { ownerId })) throw new AppError('not-allowed');
  return record;
}
