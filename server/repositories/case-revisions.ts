import { type CaseContent, caseContentSchema } from '../../shared/schemas/case';
import { canonicalJson } from '../content-hash';
import type { Db } from '../db';
import { bulkInsert } from './bulk-insert';

export type RevisionWriter = 'contributor' | 'moderator';
/** A case as it once stood. */
export type CaseRevision = { number: number; content: CaseContent; writer: RevisionWriter; month: string };

/**
 * Keeps a case as it stands, unless the newest revision is the same. Returns the number of the revision that holds it;
 * run it in the transaction that changes the case.
 */
export async function keepRevision(
  db: Db,
  caseId: string,
  { content, writer, month }: Omit<CaseRevision, 'number'>,
): Promise<number> {
  const document = canonicalJson(content);
  const [last] = await db.$queryRaw<{ number: number; content: string }[]>`
    SELECT "number", "content" FROM "CaseRevision" WHERE "caseId" = ${caseId} ORDER BY "number" DESC LIMIT 1`;
  if (last?.content === document) return last.number;
  const number = (last?.number ?? 0) + 1;
  await bulkInsert(db, 'CaseRevision', [{ caseId, number, content: document, writer, month }]);
  return number;
}

/** Everything that was kept of a case, the first first. */
export async function listRevisions(db: Db, caseId: string): Promise<CaseRevision[]> {
  const rows = await db.caseRevision.findMany({
    where: { caseId },
    orderBy: { number: 'asc' },
    select: { number: true, content: true, writer: true, month: true },
  });
  return rows.map(({ content, writer, ...row }) => ({
    ...row,
    content: caseContentSchema.parse(JSON.parse(content)),
    writer: writer === 'moderator' ? 'moderator' : 'contributor',
  }));
}
