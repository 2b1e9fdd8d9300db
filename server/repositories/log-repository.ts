import type { Db } from '../db';

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
  await db.logEntry.create({ data: row, select: { seq: true } });
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
