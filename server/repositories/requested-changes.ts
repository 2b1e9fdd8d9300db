import type { AskedChange } from '../../shared/domain/submission/asked-in-form';
import type { Db } from '../db';

/** Stores what was asked with the newest change of the case's status; run it in the same transaction. */
export async function insertRequestedChanges(db: Db, caseId: string, asked: readonly AskedChange[]): Promise<void> {
  const changePosition = (await db.caseStatusChange.count({ where: { caseId } })) - 1;
  await db.requestedChange.createMany({
    data: asked.map(({ field, reason }, position) => ({ caseId, changePosition, position, field, reason })),
  });
}

/** What was asked when changes to a case were last asked for, in the order it was asked; none where they never were. */
export async function listLastRequestedChanges(db: Db, caseId: string): Promise<AskedChange[]> {
  const last = await db.requestedChange.aggregate({ where: { caseId }, _max: { changePosition: true } });
  const { changePosition } = last._max;
  if (changePosition === null) return [];
  const select = { field: true, reason: true };
  return db.requestedChange.findMany({ where: { caseId, changePosition }, orderBy: { position: 'asc' }, select });
}
