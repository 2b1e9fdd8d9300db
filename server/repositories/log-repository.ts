import type { Db } from '../db';
import { bulkInsert } from './bulk-insert';

const select = {
  seq: true,
  month: true,
  time: true,
  kind: true,
  subjectKind: true,
  subject: true,
  actor: true,
  detail: true,
  prevHash: true,
  hash: true,
} as const;

/** An entry of the log as stored and exported; see the schema. `detail` is canonical JSON text. */
export type LogRow = {
  seq: number;
  month: string;
  time: string | null;
  kind: string;
  subjectKind: string;
  subject: string;
  actor: string | null;
  detail: string;
  prevHash: string;
  hash: string;
};

/** Number and hash of the newest entry; null where the log is empty. */
export function findLogHead(db: Db): Promise<{ seq: number; hash: string } | null> {
  return db.logEntry.findFirst({ orderBy: { seq: 'desc' }, select: { seq: true, hash: true } });
}

/** Adds the next entry. The database refuses one that does not follow the newest. */
export async function insertLogEntry(db: Db, row: LogRow): Promise<void> {
  await bulkInsert(db, 'LogEntry', [row]);
}

/** Every entry in order, read in pages. */
export async function* streamLog(db: Db): AsyncGenerator<LogRow> {
  let after = Number.MIN_SAFE_INTEGER;
  for (;;) {
    const page: LogRow[] = await db.logEntry.findMany({
      where: { seq: { gt: after } },
      orderBy: { seq: 'asc' },
      take: 500,
      select,
    });
    yield* page;
    const last = page.at(-1);
    if (!last) return;
    after = last.seq;
  }
}

/** Entries of a kind, or of all, by month, the latest first; within a month by kind and hash, which is no order of time. */
export function listLogByMonth(
  db: Db,
  { kind, skip, take }: { kind: string | null; skip: number; take: number },
): Promise<LogRow[]> {
  const orderBy = [{ month: 'desc' }, { kind: 'asc' }, { hash: 'asc' }] as const;
  return db.logEntry.findMany({ where: kind === null ? {} : { kind }, orderBy: [...orderBy], skip, take, select });
}

/** Entries of a kind, or of all, the newest first. */
export function listLogByOrder(
  db: Db,
  { kind, skip, take }: { kind: string | null; skip: number; take: number },
): Promise<LogRow[]> {
  return db.logEntry.findMany({ where: kind === null ? {} : { kind }, orderBy: { seq: 'desc' }, skip, take, select });
}

/** How many entries there are of each kind, by kind. */
export async function countLogKinds(db: Db): Promise<{ kind: string; count: number }[]> {
  const rows = await db.logEntry.groupBy({ by: ['kind'], _count: { seq: true }, orderBy: { kind: 'asc' } });
  return rows.map(({ kind, _count }) => ({ kind, count: _count.seq }));
}
