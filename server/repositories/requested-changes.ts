import type { Db } from '../db';

/** One thing that a moderator asked to have changed, at the form's own field. */
export type RequestedChange = { field: string; reason: string };

/** Stores what was asked with the newest change of the case's status; run it in the same transaction. */
export async function insertRequestedChanges(db: Db, caseId: string, asked: readonly RequestedChange[]): Promise<void> {
  const changePosition = (await db.caseStatusChange.count({ where: { caseId } })) - 1;
  await db.requestedChange.createMany({
    data: asked.map(({ field, reason }, position) => ({ caseId, changePosition, position, field, reason })),
  });
}
