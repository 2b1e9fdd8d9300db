import type { Db } from '../db';

export const EVENT_KINDS = ['import', 'import-accepted', 'fit', 'seed', 'vocabulary'] as const;
export type EventKind = (typeof EVENT_KINDS)[number];

/** What whoever runs the machine did, in one sentence. */
export type LoggedEvent = { id: string; at: Date; kind: EventKind; actor: string; detail: string };

/** Adds to the log; nothing ever changes or removes an entry. */
export async function appendEvent(db: Db, event: LoggedEvent): Promise<void> {
  await db.eventLog.create({ data: event, select: { id: true } });
}

/** The newest entries first. */
export async function listEvents(db: Db, take = 100): Promise<LoggedEvent[]> {
  const rows = await db.eventLog.findMany({
    orderBy: [{ at: 'desc' }, { id: 'asc' }],
    take,
    select: { id: true, at: true, kind: true, actor: true, detail: true },
  });
  return rows.map((row) => ({ ...row, kind: row.kind as EventKind }));
}

/** What changes more than single cases: vocabulary, devices or settings. Single cases stand in the change feed. */
const CHANGES_ALL: EventKind[] = ['fit', 'seed', 'vocabulary'];

/** Id of the newest event after which the casebook has to be loaded anew; null where there was none. */
export async function findNewestReload(db: Db): Promise<string | null> {
  const where = { kind: { in: CHANGES_ALL } };
  const row = await db.eventLog.findFirst({ where, orderBy: [{ at: 'desc' }, { id: 'asc' }], select: { id: true } });
  return row?.id ?? null;
}

/** Whether the log has an entry of this kind. */
export async function hasEvent(db: Db, kind: EventKind): Promise<boolean> {
  return (await db.eventLog.count({ where: { kind } })) > 0;
}
