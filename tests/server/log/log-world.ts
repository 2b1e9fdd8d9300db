import Database from 'better-sqlite3';
import type { PrismaClient } from '../../../prisma/generated/client';
import { type LogInput, appendLog } from '../../../server/services/log/append-log';
import { type LogRow, streamLog } from '../../../server/repositories/log-repository';

export const AT = new Date('2026-03-04T05:06:07.890Z');

/** Adds an account straight to the database. */
export async function addPerson(db: PrismaClient, id: string): Promise<string> {
  await db.user.create({ data: { id, name: id, username: id, email: `${id}@bench.invalid`, createdAt: AT, updatedAt: AT } });
  return id;
}

/** Appends in a transaction of its own. */
export function append(db: PrismaClient, input: Partial<LogInput>) {
  const subject = { kind: 'case', id: 'aaaaaaaaaaaaaaaa' } as const;
  return db.$transaction((tx) =>
    appendLog(tx, { at: AT, kind: 'case-accepted', actorId: null, subject, detail: { reason: 'complete' }, ...input }),
  );
}

export async function wholeLog(db: PrismaClient): Promise<LogRow[]> {
  const rows: LogRow[] = [];
  for await (const row of streamLog(db)) rows.push(row);
  return rows;
}

/** Does to the file what somebody with write access to it could do: the triggers are dropped first. */
export function tamper(url: string, sql: string): void {
  const file = new Database(url.slice('file:'.length));
  file.exec(
    'DROP TRIGGER "LogEntry_is_never_changed"; DROP TRIGGER "LogEntry_is_never_removed"; DROP TRIGGER "LogEntry_grows_at_its_end";',
  );
  file.exec(sql);
  file.close();
}
