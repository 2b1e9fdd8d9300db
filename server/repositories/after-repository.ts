import type { AfterKind, AfterLine, AfterSource, AfterStatus, AfterView } from '../../shared/schemas/afterwards';
import type { Db } from '../db';

const columns = { id: true, caseId: true, kind: true, months: true, source: true, month: true, status: true } as const;
type Row = { id: string; caseId: string; kind: string; months: number; source: string; month: string; status: string };
const toLine = (row: Row): AfterLine => ({
  ...row,
  kind: row.kind as AfterKind,
  source: row.source as AfterSource,
  status: row.status as AfterStatus,
});

/** Adds a report that waits; `userId` null where nobody is to be told whose it is. Run it in a transaction. */
export async function insertAfterReport(db: Db, report: Omit<AfterLine, 'status'>, userId: string | null): Promise<void> {
  await db.afterReport.create({ data: { ...report, status: 'waiting' }, select: { id: true } });
  if (userId !== null) await db.afterReporter.create({ data: { reportId: report.id, userId }, select: { reportId: true } });
}

/** Removes what an account has waiting about a case: its new report stands in place of it. */
export async function deleteWaitingOf(db: Db, caseId: string, userId: string): Promise<void> {
  await db.afterReport.deleteMany({ where: { caseId, status: 'waiting', reporter: { userId } } });
}

/** How many reports about a case wait. */
export function countWaiting(db: Db, caseId: string): Promise<number> {
  return db.afterReport.count({ where: { caseId, status: 'waiting' } });
}

/** A report with whose it is (null where nobody is told), or null. */
export async function findAfterReport(db: Db, id: string): Promise<(AfterLine & { userId: string | null }) | null> {
  const row = await db.afterReport.findUnique({ where: { id }, select: { ...columns, reporter: { select: { userId: true } } } });
  if (row === null) return null;
  const { reporter, ...report } = row;
  return { ...toLine(report), userId: reporter?.userId ?? null };
}

/** What waits for a moderator, in order of id, which says nothing about time. */
export async function listWaitingReports(db: Db, take: number): Promise<AfterLine[]> {
  const rows = await db.afterReport.findMany({
    where: { status: 'waiting', case: { status: 'accepted' } },
    orderBy: { id: 'asc' },
    take,
    select: columns,
  });
  return rows.map(toLine);
}

/** Accepted reports about a case, the earliest first. */
export async function listAcceptedReports(db: Db, caseId: string): Promise<AfterView[]> {
  const rows = await db.afterReport.findMany({
    where: { caseId, status: 'accepted' },
    orderBy: [{ month: 'asc' }, { months: 'asc' }, { id: 'asc' }],
    select: columns,
  });
  return rows.map(toLine).map(({ kind, months, source, month }) => ({ kind, months, source, month }));
}

/** An account's reports that still say whose they are, in order of id. */
export async function listReportsOf(db: Db, userId: string): Promise<AfterLine[]> {
  const rows = await db.afterReport.findMany({ where: { reporter: { userId } }, orderBy: { id: 'asc' }, select: columns });
  return rows.map(toLine);
}

/** Decides about a report that waits. False where it does not (any more). */
export async function setAfterStatus(db: Db, id: string, status: 'accepted' | 'declined'): Promise<boolean> {
  return (await db.afterReport.updateMany({ where: { id, status: 'waiting' }, data: { status } })).count > 0;
}

/** Takes off a case's reports that they are this account's. */
export async function forgetReporter(db: Db, caseId: string, userId: string): Promise<void> {
  await db.afterReporter.deleteMany({ where: { userId, report: { caseId } } });
}

/** Removes an account's reports that were not accepted. */
export async function deleteUnacceptedOf(db: Db, userId: string): Promise<void> {
  await db.afterReport.deleteMany({ where: { status: { not: 'accepted' }, reporter: { userId } } });
}

/** Keeps the hash of a case's key, in place of the last one. */
export async function saveAfterKey(db: Db, caseId: string, keyHash: string): Promise<void> {
  await db.afterKey.upsert({ where: { caseId }, create: { caseId, keyHash }, update: { keyHash }, select: { caseId: true } });
}

/** Takes a key out. Of two that use it at once, one is told true. */
export async function takeAfterKey(db: Db, caseId: string, keyHash: string): Promise<boolean> {
  return (await db.afterKey.deleteMany({ where: { caseId, keyHash } })).count === 1;
}

/** Ids of the published cases of which it was accepted that the fault came back. */
export async function listCameBack(db: Db): Promise<string[]> {
  const where = { kind: 'came-back', status: 'accepted', case: { status: 'accepted' } };
  const rows = await db.afterReport.findMany({ where, distinct: ['caseId'], select: { caseId: true } });
  return rows.map((row) => row.caseId);
}
