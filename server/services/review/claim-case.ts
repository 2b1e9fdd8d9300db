import type { Actor } from '../../../shared/domain/can/can';
import { AppError } from '../../../shared/errors';
import type { ClaimView } from '../../../shared/schemas/review';
import type { Db } from '../../db';
import { findAccount } from '../../repositories/account-repository';
import { dropClaim, findWaitingPlace, takeClaim, type WaitingPlace } from '../../repositories/waiting-cases';
import { requireForeign } from './require-decision';

/** How long a case stays with whoever looks at it; an open page renews it. */
export const CLAIM_MINUTES = 20;
const MINUTE = 60_000;

/** Who looks at a waiting case, as it is shown to a moderator; `nameOf` is asked for the others. */
export function claimView(place: Omit<WaitingPlace, 'since'>, actor: Actor, now: Date, name: string | null): ClaimView {
  const { claimedBy, claimedUntil } = place;
  if (claimedBy === null || claimedUntil === null || claimedUntil <= now) return { state: 'free' };
  const minutes = Math.ceil((claimedUntil.getTime() - now.getTime()) / MINUTE);
  return claimedBy === actor.id ? { state: 'mine', minutes } : { state: 'other', by: name ?? 'somebody', minutes };
}

/**
 * Gives a waiting case to a moderator for a while, or renews that, and says who has it then: whoever asks, unless
 * another looks at it. Throws `review-not-found` where it does not wait, and `own-submission`.
 */
export async function claimCase(db: Db, { actor, id, now }: { actor: Actor; id: string; now: Date }): Promise<ClaimView> {
  await requireForeign(db, actor, id);
  await takeClaim(db, { caseId: id, userId: actor.id, now, until: new Date(now.getTime() + CLAIM_MINUTES * MINUTE) });
  return findClaim(db, { actor, id, now });
}

/** Who looks at a waiting case now. Throws `review-not-found` where it does not wait. */
export async function findClaim(db: Db, { actor, id, now }: { actor: Actor; id: string; now: Date }): Promise<ClaimView> {
  const place = await findWaitingPlace(db, id);
  if (place === null) throw new AppError('review-not-found');
  return claimOf(db, place, { actor, now });
}

/** Who looks at the case at this place in the queue, with the name of another. */
export async function claimOf(db: Db, place: WaitingPlace, { actor, now }: { actor: Actor; now: Date }): Promise<ClaimView> {
  const other = place.claimedBy !== null && place.claimedBy !== actor.id ? await findAccount(db, place.claimedBy) : null;
  return claimView(place, actor, now, other?.name ?? null);
}

/** Gives a case back to the queue before its time has run out. */
export function releaseCase(db: Db, { actor, id }: { actor: Actor; id: string }): Promise<void> {
  return dropClaim(db, id, actor.id);
}
