import { type Actor, can } from '../../../shared/domain/can/can';
import { type CaseEvent, mayMove } from '../../../shared/domain/submission/next-status';
import { AppError } from '../../../shared/errors';
import type { CaseRecord } from '../../../shared/schemas/case';
import { contentHash } from '../../content-hash';
import type { Db } from '../../db';
import { findCase } from '../../repositories/case-repository';
import { type CaseStanding, findCaseStanding } from '../../repositories/case-standing';
import { daysBetween } from './days-between';

/** What every decision starts from: who decides, on which case, and what content they saw. */
export type DecisionInput = { actor: Actor; id: string; seen: string; now: Date };

/** The case that is decided on, and for how many whole days it has waited; null where it does not wait. */
export type Decided = { record: CaseRecord; waitedDays: number | null };

/**
 * The case that is decided on, where this moderator may cause the event now: it is not their own, nobody else looks at
 * it, and it is still what they saw. Call it inside the transaction of the decision.
 * Throws `review-not-found`, `own-submission`, `move-not-possible`, `looked-at-by-other`, `changed-meanwhile`.
 */
export async function requireDecision(db: Db, event: CaseEvent, { actor, id, seen, now }: DecisionInput): Promise<Decided> {
  const { status, place } = await requireForeign(db, actor, id);
  if (!mayMove(actor, event, { status, ownerId: null })) throw new AppError('move-not-possible', { detail: `It is ${status}.` });
  if (place?.claimedBy != null && place.claimedBy !== actor.id && place.claimedUntil !== null && place.claimedUntil > now) {
    throw new AppError('looked-at-by-other');
  }
  const record = await findCase(db, id);
  if (record === null) throw new AppError('review-not-found');
  if (contentHash(record.content) !== seen) throw new AppError('changed-meanwhile');
  return { record, waitedDays: place && daysBetween(place.since, now) };
}

/** Where a case stands that is not this moderator's own. Throws `review-not-found`, `own-submission`, `not-allowed`. */
export async function requireForeign(db: Db, actor: Actor, id: string): Promise<CaseStanding> {
  const facts = await findCaseStanding(db, id);
  if (facts === null || facts.status === 'draft') throw new AppError('review-not-found');
  if (facts.ownerId === actor.id) throw new AppError('own-submission');
  if (!can(actor, 'submission.decide', { ownerId: facts.ownerId })) throw new AppError('not-allowed');
  return facts;
}
