import { setImmediate as breath } from 'node:timers/promises';
import { Prisma } from '../../prisma/generated/client';
import type { CaseRecord, CaseStatus } from '../../shared/schemas/case';
import { AppError } from '../../shared/errors';
import { renameContent } from '../../shared/domain/words/rename-content';
import type { Db } from '../db';
import { readStoredCases } from './stored-cases';
import { readWordAliases } from './word-edit-repository';

/** How many cases are stored, of one status or of any. */
export function countCases(db: Db, status?: CaseStatus): Promise<number> {
  return db.caseFile.count({ where: status ? { status } : {} });
}

/** One case in full, or null. */
export async function findCase(db: Db, id: string): Promise<CaseRecord | null> {
  const [record] = await inPresentWords(db, await readStoredCases(db, Prisma.sql`WHERE "id" = ${id}`));
  return record ?? null;
}

/** Those of the named cases that are stored, in full, in order of id. */
export async function findCases(db: Db, ids: readonly string[]): Promise<CaseRecord[]> {
  if (ids.length === 0) return [];
  // As one value: a list of values is planned anew for each length, and ends at 32,766.
  const named = Prisma.sql`(SELECT "value" FROM json_each(${JSON.stringify(ids)}))`;
  return inPresentWords(db, await readStoredCases(db, Prisma.sql`WHERE "id" IN ${named} ORDER BY "id"`));
}

/** Hash of the stored content of those of the named cases that are stored, in order of id. */
export async function findContentHashes(db: Db, ids: readonly string[]): Promise<Map<string, string>> {
  const rows = await db.$queryRaw<{ id: string; contentHash: string }[]>`
    SELECT "id", "contentHash" FROM "CaseFile"
    WHERE "id" IN (SELECT "value" FROM json_each(${JSON.stringify(ids)})) ORDER BY "id"`;
  return new Map(rows.map((row) => [row.id, row.contentHash]));
}

/** The texts of the named cases, in no order. */
export function findNarratives(db: Db, ids: readonly string[]): Promise<{ id: string; narrative: string }[]> {
  return db.caseFile.findMany({ where: { id: { in: [...ids] } }, select: { id: true, narrative: true } });
}

/** One case in full. Throws `case-not-found`. */
export async function getCase(db: Db, id: string): Promise<CaseRecord> {
  const record = await findCase(db, id);
  if (!record) throw new AppError('case-not-found');
  return record;
}

export type CasePage = { status?: CaseStatus; after?: string | null; take?: number };

/** Cases in order of id, after the one named; `take` of them (500 unless told). An empty list is the end. */
export async function listCases(db: Db, { status, after, take = 500 }: CasePage = {}): Promise<CaseRecord[]> {
  const ofStatus = status ? Prisma.sql`AND "status" = ${status}` : Prisma.empty;
  const which = Prisma.sql`WHERE "id" > ${after ?? ''} ${ofStatus} ORDER BY "id" LIMIT ${take}`;
  return inPresentWords(db, await readStoredCases(db, which));
}

/** A page of accepted cases; see `listCases`. */
export function listAcceptedCases(db: Db, page: Omit<CasePage, 'status'> = {}): Promise<CaseRecord[]> {
  return listCases(db, { ...page, status: 'accepted' });
}

/** Every case of a status (or of any), one at a time, read in pages. */
export async function* streamCases(db: Db, status?: CaseStatus): AsyncGenerator<CaseRecord> {
  let after: string | null = null;
  for (;;) {
    const page: CaseRecord[] = await listCases(db, { ...(status ? { status } : {}), after });
    yield* page;
    const last = page.at(-1);
    if (!last) return;
    after = last.id;
    // The database answers without waiting: without a breath, whoever else asks this process would wait for the last page.
    await breath();
  }
}

/**
 * The cases in the words that the vocabulary has now; what is stored keeps its own, so that a merge can be undone exactly.
 */
async function inPresentWords(db: Db, records: CaseRecord[]): Promise<CaseRecord[]> {
  if (records.length === 0) return [];
  const aliases = await readWordAliases(db);
  return records.map((record) => ({ ...record, content: renameContent(aliases, record.content) }));
}
