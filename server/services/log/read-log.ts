import type { LogKind } from '../../../shared/domain/log/log-kinds';
import type { FullLogEntry, LogFilter, LogPage, PublicLogEntry } from '../../../shared/schemas/log';
import type { Db } from '../../db';
import { findSubjects, listStaffKeys } from '../../repositories/log-key-repository';
import { countLogKinds, findLogHead, listLogByMonth, listLogByOrder, type LogRow } from '../../repositories/log-repository';
import { personCommitment } from './commitment';
import { detailsOf, saysOf } from './log-words';

const PER_PAGE = 50;

/** The public part: what was decided, month by month. Within a month the order is by kind, and says nothing of what came first. */
export async function publicLog(db: Db, filter: LogFilter): Promise<LogPage<PublicLogEntry>> {
  const frame = await frameOf(db, filter);
  const rows = await listLogByMonth(db, { kind: filter.kind, skip: frame.skip, take: PER_PAGE });
  return { ...frame.page, entries: rows.map(publicEntry) };
}

/** The moderators' part: in the exact order, the newest first, with who did what to what as far as keys are left to say so. */
export async function fullLog(db: Db, filter: LogFilter): Promise<LogPage<FullLogEntry>> {
  const frame = await frameOf(db, filter);
  const rows = await listLogByOrder(db, { kind: filter.kind, skip: frame.skip, take: PER_PAGE });
  const subjects = await findSubjects(
    db,
    rows.map(({ subject }) => subject),
  );
  const staff = await listStaffKeys(db);
  const personIn = (place: 'actor' | 'subject', seq: number, commitment: string) =>
    staff.find(({ key, userId }) => personCommitment(key, place, seq, userId) === commitment)?.name;
  const entries = rows.map((row): FullLogEntry => {
    const found = subjects.get(row.subject);
    return {
      ...publicEntry(row),
      details: detailsOf(row, false),
      seq: row.seq,
      time: row.time,
      actor:
        row.actor === null
          ? null
          : (personIn('actor', row.seq, row.actor) ?? 'somebody who is no moderator any more, or never was'),
      subject:
        row.subjectKind === 'account'
          ? { kind: 'account', label: personIn('subject', row.seq, row.subject) ?? 'an account', href: null }
          : { kind: row.subjectKind, label: found ?? '', href: found === undefined ? null : hrefOf(row.subjectKind, found) },
      hash: row.hash,
    };
  });
  return { ...frame.page, entries };
}

const publicEntry = (row: LogRow): PublicLogEntry => ({
  key: row.hash,
  month: row.month,
  says: saysOf(row.kind),
  details: detailsOf(row, true),
});

function hrefOf(kind: string, id: string): string | null {
  return kind === 'case' ? `/review/${id}` : kind === 'word' ? '/review/words' : null;
}

async function frameOf(db: Db, { kind, page }: LogFilter) {
  const counts = (await countLogKinds(db)).map((line) => ({ ...line, kind: line.kind as LogKind, says: saysOf(line.kind) }));
  const total = counts.filter((line) => kind === null || line.kind === kind).reduce((sum, { count }) => sum + count, 0);
  const pages = Math.max(1, Math.ceil(total / PER_PAGE));
  const at = Math.min(page, pages);
  return { skip: (at - 1) * PER_PAGE, page: { page: at, pages, total, counts, checkpoint: await findLogHead(db) } };
}
