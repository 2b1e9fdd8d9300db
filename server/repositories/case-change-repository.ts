import type { Db } from '../db';
import { bulkInsert } from './bulk-insert';

/** One entry of the feed: this case was published, changed while published, or taken back. */
export type CaseChange = { seq: number; caseId: string };

/**
 * Tells every follower of the feed that what is published of these cases has changed. Run it in the transaction of the
 * change itself: the feed then never lacks a change, and never names one that did not happen.
 */
export function appendCaseChanges(db: Db, caseIds: readonly string[]): Promise<void> {
  return bulkInsert(
    db,
    'CaseChange',
    caseIds.map((caseId) => ({ caseId })),
  );
}

/** Changes after the one numbered `after`, in order; `take` of them at most. */
export function listCaseChanges(db: Db, { after, take }: { after: number; take: number }): Promise<CaseChange[]> {
  return db.caseChange.findMany({ where: { seq: { gt: after } }, orderBy: { seq: 'asc' }, take, select: { seq: true, caseId: true } });
}

/** The change of this number; null where there is none. */
export function findChange(db: Db, seq: number): Promise<CaseChange | null> {
  return db.caseChange.findUnique({ where: { seq }, select: { seq: true, caseId: true } });
}

/** Number of the newest change; 0 where there is none yet. */
export async function findNewestChange(db: Db): Promise<number> {
  const row = await db.caseChange.findFirst({ orderBy: { seq: 'desc' }, select: { seq: true } });
  return row?.seq ?? 0;
}
