import type { CaseContent, CaseStatus } from '../../shared/schemas/case';
import type { Db } from '../db';
import { contentHash } from '../content-hash';
import { bulkInsert } from './bulk-insert';
import { appendCaseChanges } from './case-change-repository';
import { caseChildRows, caseFileRow } from './case-rows';
import { getDevicePlace, readDevicePlaces } from './device-places';

/** A proposed word as stored with its case. */
export type StoredProposal = { kind: string; word: string; meaning: string };
/** A kept stretch of a text, for the moderators. */
export type StoredMark = { field: string; kind: string; certainty: string; start: number; end: number };

/** Ids and statuses of the stored cases with this very content. */
export async function findSameContent(db: Db, content: CaseContent): Promise<{ id: string; status: CaseStatus }[]> {
  const rows = await db.caseFile.findMany({
    where: { contentHash: contentHash(content) },
    orderBy: { occurrence: 'asc' },
    select: { id: true, status: true },
  });
  return rows.map((row) => ({ id: row.id, status: row.status as CaseStatus }));
}

/** Gives a stored case another content under its id; run it in a transaction. */
export async function replaceContent(db: Db, id: string, status: CaseStatus, content: CaseContent): Promise<void> {
  const hash = contentHash(content);
  const last = await db.caseFile.findFirst({
    where: { contentHash: hash, id: { not: id } },
    orderBy: { occurrence: 'desc' },
    select: { occurrence: true },
  });
  const place = getDevicePlace(await readDevicePlaces(db), content.device);
  const row = caseFileRow({ id, status, content }, place, hash, last === null ? 0 : last.occurrence + 1);
  const where = { caseId: id };
  // Fixes hang on their steps and designators on their causes: they go with them.
  await db.caseSymptom.deleteMany({ where });
  await db.caseStep.deleteMany({ where });
  await db.caseReading.deleteMany({ where });
  await db.caseCause.deleteMany({ where });
  await db.caseAfterCheck.deleteMany({ where });
  await db.caseFile.update({ where: { id }, data: row, select: { id: true } });
  const below = caseChildRows(id, content);
  await bulkInsert(db, 'CaseSymptom', below.symptoms);
  await bulkInsert(db, 'CaseStep', below.steps);
  await bulkInsert(db, 'CaseStepFix', below.stepFixes);
  await bulkInsert(db, 'CaseReading', below.readings);
  await bulkInsert(db, 'CaseCause', below.causes);
  await bulkInsert(db, 'CaseCauseDesignator', below.designators);
  await bulkInsert(db, 'CaseAfterCheck', below.afterChecks);
  if (status === 'accepted') await appendCaseChanges(db, [id]);
}

/** Stores what goes to review beside a case, in place of what was there. */
export async function replaceReviewNotes(
  db: Db,
  caseId: string,
  proposals: StoredProposal[],
  marks: StoredMark[],
): Promise<void> {
  await db.proposedWord.deleteMany({ where: { caseId } });
  await bulkInsert(
    db,
    'ProposedWord',
    proposals.map((proposal, position) => ({ caseId, position, ...proposal })),
  );
  await replaceMarks(db, caseId, marks);
}

/** Stores the stretches that the moderators have to look at, in place of what was there; run it in a transaction. */
export async function replaceMarks(db: Db, caseId: string, marks: readonly StoredMark[]): Promise<void> {
  await db.detailMark.deleteMany({ where: { caseId } });
  await bulkInsert(
    db,
    'DetailMark',
    marks.map(({ start, end, ...mark }, position) => ({ caseId, position, ...mark, startOffset: start, endOffset: end })),
  );
}

/** Words proposed with a case, in their order. */
export function listProposals(db: Db, caseId: string): Promise<StoredProposal[]> {
  return db.proposedWord.findMany({
    where: { caseId },
    orderBy: { position: 'asc' },
    select: { kind: true, word: true, meaning: true },
  });
}

/** Stretches that the contributor of a case kept, in their order. */
export async function listMarks(db: Db, caseId: string): Promise<StoredMark[]> {
  const rows = await db.detailMark.findMany({
    where: { caseId },
    orderBy: { position: 'asc' },
    select: { field: true, kind: true, certainty: true, startOffset: true, endOffset: true },
  });
  return rows.map(({ startOffset, endOffset, ...mark }) => ({ ...mark, start: startOffset, end: endOffset }));
}

/** Words proposed with the cases that wait for a decision, or were published, in order of kind and word; each once. */
export async function listProposedWords(db: Db, take: number): Promise<(StoredProposal & { cases: number })[]> {
  const rows = await db.proposedWord.groupBy({
    by: ['kind', 'word', 'meaning'],
    where: { case: { status: { in: ['submitted', 'resubmitted', 'changes-requested', 'accepted'] } } },
    _count: { caseId: true },
    orderBy: [{ kind: 'asc' }, { word: 'asc' }, { meaning: 'asc' }],
    take,
  });
  return rows.map(({ _count, ...proposal }) => ({ ...proposal, cases: _count.caseId }));
}
