import { type CaseEvent, nextStatus } from '../../../shared/domain/submission/next-status';
import { isWaiting } from '../../../shared/domain/review/is-waiting';
import { AppError } from '../../../shared/errors';
import type { CaseStatus } from '../../../shared/schemas/case';
import type { Db } from '../../db';
import { changeStatus } from '../../repositories/submission-history';
import { enterQueue, leaveQueue } from '../../repositories/waiting-cases';

export type CaseMove = { event: CaseEvent; now: Date; reason: string | null };

/** The month of a moment, in universal time: as fine as any public time is. */
export const monthOf = (now: Date): string => now.toISOString().slice(0, 7);

/** What whoever posted a case does with it. */
export const ownMove = (event: CaseEvent, { now }: { now: Date }): CaseMove => ({ event, now, reason: null });

/**
 * The one way in which a case changes its status: writes the event, the status that it leads to, its place in the queue
 * and, where what is published changes, the feed. Run it in a transaction. Throws `move-not-possible`.
 */
export async function moveCase(db: Db, from: { id: string; status: CaseStatus }, move: CaseMove): Promise<CaseStatus> {
  const { event, now, reason } = move;
  const to = nextStatus(from.status, event);
  if (to === null) throw new AppError('move-not-possible', { detail: `It is ${from.status}.` });
  await changeStatus(db, from.id, { event, from: from.status, to, month: monthOf(now), reason });
  if (isWaiting(to)) await enterQueue(db, [from.id], now);
  else await leaveQueue(db, from.id);
  return to;
}
