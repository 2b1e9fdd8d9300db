import type { CaseStatus } from '../../shared/schemas/case';
import type { CaseEvent } from '../../shared/domain/submission/next-status';
import { AppError } from '../../shared/errors';
import type { Db } from '../db';
import { appendCaseChanges } from './case-change-repository';

/** One thing that happened to a case: no person, and no time finer than a month. */
export type StatusChange = { event: CaseEvent; from: CaseStatus; to: CaseStatus; month: string; reason: string | null };

/** Writes the event, the status that it leads to and, where what is published changes, the feed; run it in a transaction. Throws `move-not-possible` where it has another status. */
export async function changeStatus(db: Db, caseId: string, change: StatusChange): Promise<void> {
  const { event, from, to, month, reason } = change;
  await db.$executeRaw`
    INSERT INTO "CaseStatusChange" ("caseId", "position", "event", "fromStatus", "toStatus", "month", "reason")
    SELECT ${caseId}, COUNT(*), ${event}, ${from}, ${to}, ${month}, ${reason} FROM "CaseStatusChange" WHERE "caseId" = ${caseId}`;
  const count = await db.$executeRaw`UPDATE "CaseFile" SET "status" = ${to} WHERE "id" = ${caseId} AND "status" = ${from}`;
  // It changed between being read and now, or another case has this id: nothing of this may stay.
  if (count !== 1) throw new AppError('move-not-possible', { detail: `It is not ${from} any more.` });
  if (from === 'accepted' || to === 'accepted') await appendCaseChanges(db, [caseId]);
}

/** What happened to a case, the first first. */
export async function listStatusChanges(db: Db, caseId: string): Promise<StatusChange[]> {
  const rows = await db.caseStatusChange.findMany({
    where: { caseId },
    orderBy: { position: 'asc' },
    select: { event: true, fromStatus: true, toStatus: true, month: true, reason: true },
  });
  return rows.map(({ event, fromStatus, toStatus, month, reason }) => ({
    event: event as CaseEvent,
    from: fromStatus as CaseStatus,
    to: toStatus as CaseStatus,
    month,
    reason,
  }));
}
