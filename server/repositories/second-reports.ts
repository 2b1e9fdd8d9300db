import type { Db } from '../db';

/** Says that a case tells the same repair as a published one. */
export async function linkSecondReport(db: Db, caseId: string, ofCaseId: string): Promise<void> {
  await db.secondReport.create({ data: { caseId, ofCaseId }, select: { caseId: true } });
}

/** Takes that back; nothing happens where it was not said. */
export async function unlinkSecondReport(db: Db, caseId: string): Promise<void> {
  await db.secondReport.deleteMany({ where: { caseId } });
}

/** The published case that a case tells again, or null. */
export async function findFirstReport(db: Db, caseId: string): Promise<string | null> {
  const row = await db.secondReport.findUnique({ where: { caseId }, select: { ofCaseId: true } });
  return row?.ofCaseId ?? null;
}

/** Ids of the cases that tell this one again, in order. */
export async function listSecondReports(db: Db, ofCaseId: string): Promise<string[]> {
  const rows = await db.secondReport.findMany({ where: { ofCaseId }, orderBy: { caseId: 'asc' }, select: { caseId: true } });
  return rows.map((row) => row.caseId);
}

/** How many cases tell this one again. */
export function countSecondReports(db: Db, ofCaseId: string): Promise<number> {
  return db.secondReport.count({ where: { ofCaseId } });
}
