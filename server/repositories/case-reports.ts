import type { ReportReason, Settlement } from '../../shared/schemas/review';
import type { Db } from '../db';

/** What somebody has against a published case. */
export type CaseReport = {
  id: string;
  caseId: string;
  reason: ReportReason;
  text: string;
  month: string;
  settledAs: Settlement | null;
  note: string | null;
};

const select = { id: true, caseId: true, reason: true, text: true, month: true, settledAs: true, note: true } as const;
type Row = Omit<CaseReport, 'reason' | 'settledAs'> & { reason: string; settledAs: string | null };
const toReport = (row: Row): CaseReport => ({
  ...row,
  reason: row.reason as ReportReason,
  settledAs: row.settledAs as Settlement | null,
});

/** Stores a report; false where the same is open already. */
export async function insertReport(
  db: Db,
  report: Pick<CaseReport, 'id' | 'caseId' | 'reason' | 'text' | 'month'> & { since: Date },
): Promise<boolean> {
  const { caseId, reason, text } = report;
  if ((await db.caseReport.count({ where: { caseId, reason, text, settledAs: null } })) > 0) return false;
  await db.caseReport.create({ data: report, select: { id: true } });
  return true;
}

/** Open reports, the oldest first, after the one named. */
export async function listOpenReports(db: Db, { after, take }: { after: string | null; take: number }): Promise<CaseReport[]> {
  const from =
    after === null ? null : await db.caseReport.findUnique({ where: { id: after }, select: { since: true, id: true } });
  const later = from?.since ? [{ since: { gt: from.since } }, { since: from.since, id: { gt: from.id } }] : null;
  const rows = await db.caseReport.findMany({
    where: { settledAs: null, ...(later && { OR: later }) },
    orderBy: [{ since: 'asc' }, { id: 'asc' }],
    take,
    select,
  });
  return rows.map(toReport);
}

/** Every report about a case, open ones first. */
export async function listReportsOf(db: Db, caseId: string): Promise<CaseReport[]> {
  const rows = await db.caseReport.findMany({ where: { caseId }, orderBy: [{ settledAs: 'asc' }, { id: 'asc' }], select });
  return rows.map(toReport);
}

export function countOpenReports(db: Db): Promise<number> {
  return db.caseReport.count({ where: { settledAs: null } });
}

/** An open report, or null. */
export async function findOpenReport(db: Db, id: string): Promise<CaseReport | null> {
  const row = await db.caseReport.findFirst({ where: { id, settledAs: null }, select });
  return row && toReport(row);
}

/** Settles one open report, or all that are open about a case. Its exact time goes. Returns the ids of those settled. */
export async function settleReports(
  db: Db,
  which: { id: string } | { caseId: string },
  { settledAs, note }: { settledAs: Settlement; note: string | null },
): Promise<string[]> {
  const where = { ...which, settledAs: null };
  const open = await db.caseReport.findMany({ where, select: { id: true } });
  await db.caseReport.updateMany({ where, data: { settledAs, note, since: null } });
  return open.map((row) => row.id);
}
