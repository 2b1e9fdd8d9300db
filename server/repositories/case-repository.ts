import { setImmediate as breath } from 'node:timers/promises';
import { sumAfterwards } from '../../shared/domain/casebook/proof-now';
import type { CaseContent, CaseRecord, CaseStatus } from '../../shared/schemas/case';
import { AppError } from '../../shared/errors';
import { renameContent } from '../../shared/domain/words/rename-content';
import type { Db } from '../db';
import { groupBy } from './entry-lists';
import { readWordAliases } from './word-edit-repository';

/** How many cases are stored, of one status or of any. */
export function countCases(db: Db, status?: CaseStatus): Promise<number> {
  return db.caseFile.count({ where: status ? { status } : {} });
}

/** One case in full, or null. */
export async function findCase(db: Db, id: string): Promise<CaseRecord | null> {
  const files = await db.caseFile.findMany({ where: { id }, select: fileSelect });
  const [record] = await withContents(db, files);
  return record ?? null;
}

/** Those of the named cases that are stored, in full, in order of id. */
export async function findCases(db: Db, ids: readonly string[]): Promise<CaseRecord[]> {
  const files = await db.caseFile.findMany({ where: { id: { in: [...ids] } }, orderBy: { id: 'asc' }, select: fileSelect });
  return withContents(db, files, { in: files.map((file) => file.id) });
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
  const files = await db.caseFile.findMany({
    where: { ...(status ? { status } : {}), ...(after ? { id: { gt: after } } : {}) },
    orderBy: { id: 'asc' },
    take,
    select: fileSelect,
  });
  return withContents(db, files);
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

const fileSelect = {
  id: true,
  modelSlug: true,
  boardSlug: true,
  month: true,
  narrative: true,
  complete: true,
  proof: true,
  provedByStep: true,
  outcome: true,
  soakMinutes: true,
  status: true,
} as const;

type FileRow = {
  id: string;
  modelSlug: string;
  boardSlug: string | null;
  month: string;
  narrative: string;
  complete: boolean;
  proof: string | null;
  provedByStep: number | null;
  outcome: string;
  soakMinutes: number | null;
  status: string;
};

type IdFilter = { gte: string; lte: string } | { in: string[] };

/**
 * Reads what stands below the given cases: one query per table, over the range of their ids unless told otherwise. They come in
 * the words that the vocabulary has now; what is stored keeps its own, so that a merge can be undone exactly.
 */
async function withContents(db: Db, files: readonly FileRow[], ids?: IdFilter): Promise<CaseRecord[]> {
  const first = files[0];
  const last = files.at(-1);
  if (!first || !last) return [];
  const below = await readBelow(db, ids ?? { gte: first.id, lte: last.id });
  const aliases = await readWordAliases(db);
  return files.map((file) => ({
    id: file.id,
    status: file.status as CaseStatus,
    content: renameContent(aliases, contentOf(file, below)),
    ...afterwardsOf(below.afterwards.get(file.id) ?? []),
  }));
}

async function readBelow(db: Db, caseId: IdFilter) {
  const where = { caseId };
  const inOrder = [{ caseId: 'asc' as const }, { position: 'asc' as const }];
  const symptoms = await db.caseSymptom.findMany({
    where,
    orderBy: inOrder,
    select: { caseId: true, symptomSlug: true, present: true },
  });
  const steps = await db.caseStep.findMany({
    where,
    orderBy: inOrder,
    select: {
      caseId: true,
      position: true,
      kind: true,
      checkSlug: true,
      outcomeSlug: true,
      designator: true,
      value: true,
      unit: true,
      result: true,
    },
  });
  const stepFixes = await db.caseStepFix.findMany({
    where,
    orderBy: [{ caseId: 'asc' }, { stepPosition: 'asc' }, { position: 'asc' }],
    select: { caseId: true, stepPosition: true, fixSlug: true, designator: true },
  });
  const readings = await db.caseReading.findMany({
    where,
    orderBy: inOrder,
    select: { caseId: true, designator: true, pin: true, state: true, value: true, unit: true },
  });
  const causes = await db.caseCause.findMany({
    where,
    orderBy: inOrder,
    select: { caseId: true, position: true, causeSlug: true },
  });
  const designators = await db.caseCauseDesignator.findMany({
    where,
    orderBy: [{ caseId: 'asc' }, { causePosition: 'asc' }, { position: 'asc' }],
    select: { caseId: true, causePosition: true, designator: true },
  });
  const afterChecks = await db.caseAfterCheck.findMany({ where, orderBy: inOrder, select: { caseId: true, checkSlug: true } });
  const afterwards = await db.afterReport.findMany({
    where: { caseId, status: 'accepted' },
    select: { caseId: true, kind: true, months: true },
  });
  const byCase = <T extends { caseId: string }>(rows: readonly T[]) => groupBy(rows, (row) => row.caseId);
  return {
    symptoms: byCase(symptoms),
    steps: byCase(steps),
    stepFixes: groupBy(stepFixes, (f) => `${f.caseId} ${f.stepPosition}`),
    readings: byCase(readings),
    causes: byCase(causes),
    designators: groupBy(designators, (d) => `${d.caseId} ${d.causePosition}`),
    afterChecks: byCase(afterChecks),
    afterwards: byCase(afterwards),
  };
}

function afterwardsOf(reports: readonly { kind: string; months: number }[]): Pick<CaseRecord, 'afterwards'> {
  const afterwards = sumAfterwards(reports);
  return afterwards === null ? {} : { afterwards };
}

type Below = Awaited<ReturnType<typeof readBelow>>;

/** Closed sets were checked by the schema before the case was stored, so their types are restored, not checked again. */
function contentOf(file: FileRow, below: Below): CaseContent {
  return {
    device: file.boardSlug ?? file.modelSlug,
    month: file.month,
    symptoms: (below.symptoms.get(file.id) ?? []).map((s) => ({ symptom: s.symptomSlug, present: s.present })),
    symptomsComplete: file.complete,
    steps: (below.steps.get(file.id) ?? []).map((step) => stepOf(step, below.stepFixes.get(`${file.id} ${step.position}`) ?? [])),
    readings: (below.readings.get(file.id) ?? []).map(
      ({ designator, pin, state, value, unit }) => ({ designator, pin, state, value, unit }) as CaseContent['readings'][number],
    ),
    causes: (below.causes.get(file.id) ?? []).map((c) => ({
      cause: c.causeSlug,
      designators: (below.designators.get(`${file.id} ${c.position}`) ?? []).map((d) => d.designator),
    })),
    proof: file.proof as CaseContent['proof'],
    provedByStep: file.provedByStep,
    outcome: file.outcome as CaseContent['outcome'],
    afterRepairChecks: (below.afterChecks.get(file.id) ?? []).map((a) => a.checkSlug),
    soakMinutes: file.soakMinutes,
    narrative: file.narrative,
  };
}

type StepRow = NonNullable<ReturnType<Below['steps']['get']>>[number];

function stepOf(step: StepRow, fixes: readonly { fixSlug: string; designator: string | null }[]): CaseContent['steps'][number] {
  if (step.kind === 'fix') {
    return {
      kind: 'fix',
      fixes: fixes.map((f) => ({ fix: f.fixSlug, designator: f.designator })),
      result: step.result as Extract<CaseContent['steps'][number], { kind: 'fix' }>['result'],
    };
  }
  if (step.checkSlug === null || step.outcomeSlug === null) throw new Error('A stored check has no outcome.');
  return {
    kind: 'check',
    check: step.checkSlug,
    outcome: step.outcomeSlug,
    designator: step.designator,
    value: step.value,
    unit: step.unit as Extract<CaseContent['steps'][number], { kind: 'check' }>['unit'],
  };
}
