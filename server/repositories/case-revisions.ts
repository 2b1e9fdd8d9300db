import { type CaseContent, caseContentSchema } from '../../shared/schemas/case';
import { canonicalJson } from '../content-hash';
import type { Db } from '../db';

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
  const last = await db.caseRevision.findFirst({
    where: { caseId },
    orderBy: { number: 'desc' },
    select: { number: true, content: true },
  });
  if (last?.content === document) return last.number;
  const number = (last?.number ?? 0) + 1;
  await db.caseRevision.create({ data: { caseId, number, content: document, writer, month }, select: { number: true } });
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
