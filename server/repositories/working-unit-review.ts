import type { WorkingUnitRecord, WorkingUnitStatus } from '../../shared/schemas/case';
import { contentHash } from '../content-hash';
import type { Db } from '../db';
import { recordOf, unitSelect } from './working-unit-repository';

/** A contributed working unit on its way through review. `ownerId` null: the link was cut. */
export type ReviewedUnit = WorkingUnitRecord & { status: WorkingUnitStatus; ownerId: string | null };

const select = { ...unitSelect, status: true, postedBy: { select: { userId: true } } } as const;
type Row = Parameters<typeof recordOf>[0] & { status: string; postedBy: { userId: string } | null };
const reviewed = (row: Row): ReviewedUnit => ({
  ...recordOf(row),
  status: row.status as WorkingUnitStatus,
  ownerId: row.postedBy?.userId ?? null,
});

/** Says who contributed a working unit. */
export async function insertWorkingUnitLink(db: Db, unitId: string, userId: string): Promise<void> {
  await db.postedWorkingUnit.create({ data: { unitId, userId }, select: { unitId: true } });
}

/** One working unit of any status, or null. */
export async function findReviewedUnit(db: Db, id: string): Promise<ReviewedUnit | null> {
  const row = await db.workingUnit.findUnique({ where: { id }, select });
  return row && reviewed(row);
}

/** Working units of a status, in order of id, at most `take`. */
export async function listUnitsOfStatus(db: Db, status: WorkingUnitStatus, take: number): Promise<ReviewedUnit[]> {
  return (await db.workingUnit.findMany({ where: { status }, orderBy: { id: 'asc' }, take, select })).map(reviewed);
}

/** Working units that an account contributed and is still linked to, in order of id. */
export async function listUnitsOfOwner(db: Db, userId: string): Promise<ReviewedUnit[]> {
  return (await db.workingUnit.findMany({ where: { postedBy: { userId } }, orderBy: { id: 'asc' }, select })).map(reviewed);
}

/** The same readings of the same board by the same account, or null. */
export async function findSameUnit(db: Db, content: Omit<WorkingUnitRecord, 'id'>, userId: string): Promise<ReviewedUnit | null> {
  const where = { contentHash: contentHash(content), postedBy: { userId } };
  const row = await db.workingUnit.findFirst({ where, select });
  return row && reviewed(row);
}

/** Changes a status, provided that it still is what it was; false where somebody was quicker. */
export async function changeUnitStatus(
  db: Db,
  id: string,
  { from, to }: { from: WorkingUnitStatus; to: WorkingUnitStatus },
): Promise<boolean> {
  return (await db.workingUnit.updateMany({ where: { id, status: from }, data: { status: to } })).count > 0;
}
