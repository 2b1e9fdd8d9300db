import type { CaseRecord } from '../../shared/schemas/case';
import { contentHash } from '../content-hash';
import { bulkInsert } from './bulk-insert';
import { appendCaseChanges } from './case-change-repository';
import { caseChildRows, caseFileRow } from './case-rows';
import type { Db } from '../db';
import { getDevicePlace, readDevicePlaces } from './device-places';

const CHUNK = 300;

/** A case as it comes in: `id` null where the source gives none. */
export type IncomingCase = Omit<CaseRecord, 'id'> & { id: string | null };

export type InsertCasesOptions = {
  /** Makes an id for a case that comes without one. */
  newId: () => string;
  /** Told after each chunk how many of the incoming cases are done. */
  onProgress?: (done: number) => void;
};

/**
 * Stores cases and returns those that were new. A case with an id is new where the id is; a case without one is
 * new where its very content is stored fewer times than it has come so far: the same file twice adds nothing, and
 * two equal rows of one file stay two cases. Run it in a transaction: cut off in the middle, it would leave cases half
 * stored.
 */
export async function insertCases(
  db: Db,
  cases: readonly IncomingCase[],
  { newId, onProgress }: InsertCasesOptions,
): Promise<CaseRecord[]> {
  const places = await readDevicePlaces(db);
  const known = await readKnown(db);
  const cameWithoutId = new Map<string, number>();
  const added: CaseRecord[] = [];
  for (let start = 0; start < cases.length; start += CHUNK) {
    const fresh = [];
    for (const incoming of cases.slice(start, start + CHUNK)) {
      const hash = contentHash(incoming.content);
      const stored = known.copies.get(hash) ?? 0;
      if (incoming.id === null) {
        const nth = (cameWithoutId.get(hash) ?? 0) + 1;
        cameWithoutId.set(hash, nth);
        if (nth <= stored) continue;
      } else if (known.ids.has(incoming.id)) continue;
      const record = { ...incoming, id: incoming.id ?? newId() };
      known.ids.add(record.id);
      known.copies.set(hash, stored + 1);
      fresh.push({ record, hash, occurrence: stored });
    }
    await insertChunk(
      db,
      fresh.map(({ record, hash, occurrence }) => ({
        record,
        file: caseFileRow(record, getDevicePlace(places, record.content.device), hash, occurrence),
      })),
    );
    for (const { record } of fresh) added.push(record);
    onProgress?.(Math.min(start + CHUNK, cases.length));
  }
  return added;
}

/** Ids in use, and for each content the first occurrence number that is free. */
async function readKnown(db: Db) {
  const rows = await db.caseFile.findMany({ select: { id: true, contentHash: true, occurrence: true } });
  const copies = new Map<string, number>();
  for (const row of rows) copies.set(row.contentHash, Math.max(copies.get(row.contentHash) ?? 0, row.occurrence + 1));
  return { ids: new Set(rows.map((row) => row.id)), copies };
}

async function insertChunk(db: Db, chunk: { record: CaseRecord; file: ReturnType<typeof caseFileRow> }[]) {
  if (chunk.length === 0) return;
  const children = chunk.map(({ record }) => caseChildRows(record.id, record.content));
  await bulkInsert(
    db,
    'CaseFile',
    chunk.map(({ file }) => file),
  );
  await bulkInsert(
    db,
    'CaseSymptom',
    children.flatMap((c) => c.symptoms),
  );
  await bulkInsert(
    db,
    'CaseStep',
    children.flatMap((c) => c.steps),
  );
  await bulkInsert(
    db,
    'CaseStepFix',
    children.flatMap((c) => c.stepFixes),
  );
  await bulkInsert(
    db,
    'CaseReading',
    children.flatMap((c) => c.readings),
  );
  await bulkInsert(
    db,
    'CaseCause',
    children.flatMap((c) => c.causes),
  );
  await bulkInsert(
    db,
    'CaseCauseDesignator',
    children.flatMap((c) => c.designators),
  );
  await bulkInsert(
    db,
    'CaseAfterCheck',
    children.flatMap((c) => c.afterChecks),
  );
  await appendCaseChanges(
    db,
    chunk.filter(({ record }) => record.status === 'accepted').map(({ record }) => record.id),
  );
}
