import type { CaseStatus } from '../../shared/schemas/case';
import type { Db } from '../db';

/** Says who posted a case. */
export async function insertLink(db: Db, caseId: string, userId: string): Promise<void> {
  await db.postedCase.create({ data: { caseId, userId }, select: { caseId: true } });
}

/** Who posted a case; null where nobody did, or the link was cut. */
export async function findOwner(db: Db, caseId: string): Promise<string | null> {
  const row = await db.postedCase.findUnique({ where: { caseId }, select: { userId: true } });
  return row?.userId ?? null;
}

/** Cuts the link of a case for good. False where there was none to this account. */
export async function deleteLink(db: Db, caseId: string, userId: string): Promise<boolean> {
  return (await db.postedCase.deleteMany({ where: { caseId, userId } })).count > 0;
}

/** Ids and statuses of the cases that an account has posted and is still linked to, in order of id. */
export async function listPosted(db: Db, userId: string): Promise<{ id: string; status: CaseStatus }[]> {
  const rows = await db.postedCase.findMany({
    where: { userId },
    orderBy: { caseId: 'asc' },
    select: { case: { select: { id: true, status: true } } },
  });
  return rows.map((row) => ({ id: row.case.id, status: row.case.status as CaseStatus }));
}

/** Stands in the casebook, or counts for a case that does. */
const PUBLISHED: CaseStatus[] = ['accepted', 'merged'];

/** Removes every case of an account that is not published, with all that stands below it. */
export async function deleteUnpublishedOf(db: Db, userId: string): Promise<void> {
  await db.caseFile.deleteMany({ where: { postedBy: { userId }, status: { notIn: PUBLISHED } } });
}

/** Removes a case for good, with all that stands below it. */
export async function deleteCase(db: Db, caseId: string): Promise<void> {
  await db.caseFile.delete({ where: { id: caseId }, select: { id: true } });
}
