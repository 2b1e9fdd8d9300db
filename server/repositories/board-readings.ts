import type { Reading } from '../../shared/schemas/case';
import type { Db } from '../db';

/** Readings of one published case, and the parts that its cause was at. */
export type CaseReadings = { id: string; month: string; readings: Reading[]; designators: string[] };

/** Published cases of a board that carry readings at pins and name the parts of their cause, in order of id. */
export async function listCaseReadings(db: Db, board: string): Promise<CaseReadings[]> {
  const rows = await db.caseFile.findMany({
    where: { status: 'accepted', boardSlug: board, readings: { some: {} }, causes: { some: { designators: { some: {} } } } },
    orderBy: { id: 'asc' },
    select: {
      id: true,
      month: true,
      readings: { orderBy: { position: 'asc' }, select: { designator: true, pin: true, state: true, value: true, unit: true } },
      causes: { select: { designators: { select: { designator: true } } } },
    },
  });
  return rows.map(({ id, month, readings, causes }) => ({
    id,
    month,
    readings: readings as Reading[],
    designators: causes.flatMap((cause) => cause.designators.map((d) => d.designator)),
  }));
}
