import { Prisma } from '../../prisma/generated/client';
import { sumAfterwards } from '../../shared/domain/casebook/proof-now';
import type { CaseContent, CaseRecord, CaseStatus } from '../../shared/schemas/case';
import type { Db } from '../db';

type Step = CaseContent['steps'][number];
type Reading = CaseContent['readings'][number];

/** What stands below a case: one row an array, its cells in the order of the columns in `BELOW`. */
type Below = {
  symptoms: [slug: string, present: 0 | 1][];
  steps: [position: number, kind: string, check: string | null, outcome: string | null, ...StepCells][];
  fixes: [stepPosition: number, fix: string, designator: string | null][];
  readings: [designator: string, pin: string, state: string | null, value: number | null, unit: string | null][];
  causes: [position: number, slug: string][];
  designators: [causePosition: number, designator: string][];
  afterChecks: [check: string][];
  afterwards: [kind: string, months: number][];
};
type StepCells = [designator: string | null, value: number | null, unit: string | null, result: string | null];

/** A case's own row. */
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

/** Which table, columns and order, and which of its rows. */
const BELOW: Record<keyof Below, { from: Prisma.ModelName; columns: string[]; order: string[]; only?: string }> = {
  symptoms: { from: 'CaseSymptom', columns: ['symptomSlug', 'present'], order: ['position'] },
  steps: {
    from: 'CaseStep',
    columns: ['position', 'kind', 'checkSlug', 'outcomeSlug', 'designator', 'value', 'unit', 'result'],
    order: ['position'],
  },
  fixes: { from: 'CaseStepFix', columns: ['stepPosition', 'fixSlug', 'designator'], order: ['stepPosition', 'position'] },
  readings: { from: 'CaseReading', columns: ['designator', 'pin', 'state', 'value', 'unit'], order: ['position'] },
  causes: { from: 'CaseCause', columns: ['position', 'causeSlug'], order: ['position'] },
  designators: {
    from: 'CaseCauseDesignator',
    columns: ['causePosition', 'designator'],
    order: ['causePosition', 'position'],
  },
  afterChecks: { from: 'CaseAfterCheck', columns: ['checkSlug'], order: ['position'] },
  afterwards: { from: 'AfterReport', columns: ['kind', 'months'], order: ['id'], only: `"status" = 'accepted'` },
};

const quoted = (names: readonly string[]): string => names.map((name) => `"${name}"`).join(', ');

const arrays = Object.entries(BELOW).map(([name, { from, columns, order, only = '1 = 1' }]) => {
  const array = `json_group_array(json_array(${quoted(columns)}) ORDER BY ${quoted(order)})`;
  return `(SELECT ${array} FROM "${from}" WHERE "caseId" = "CaseFile"."id" AND ${only}) AS "${name}"`;
});

const SELECT = Prisma.raw(`
  SELECT "id", "modelSlug", "boardSlug", "month", "narrative", "complete", "proof", "provedByStep", "outcome",
    "soakMinutes", "status", ${arrays.join(', ')}
  FROM "CaseFile"`);

/**
 * Cases in full, in the words that are stored: one statement, with what stands below each case as JSON in its row. Read
 * table by table, a case took six times as long, and a page of 500 twice as long.
 *
 * @param which what follows the table: WHERE, ORDER BY, LIMIT.
 */
export async function readStoredCases(db: Db, which: Prisma.Sql): Promise<CaseRecord[]> {
  const rows = await db.$queryRaw<(FileRow & Record<keyof Below, string>)[]>`${SELECT} ${which}`;
  return rows.map(recordOf);
}

function recordOf(row: FileRow & Record<keyof Below, string>): CaseRecord {
  const read = <K extends keyof Below>(name: K): Below[K] => JSON.parse(row[name]);
  const afterwards = sumAfterwards(read('afterwards').map(([kind, months]) => ({ kind, months })));
  return {
    id: row.id,
    status: row.status as CaseStatus,
    content: contentOf(row, read),
    ...(afterwards === null ? {} : { afterwards }),
  };
}

/** Closed sets were checked by the schema before the case was stored, so their types are restored, not checked again. */
function contentOf(file: FileRow, read: <K extends keyof Below>(name: K) => Below[K]): CaseContent {
  const fixes = read('fixes');
  const designators = read('designators');
  return {
    device: file.boardSlug ?? file.modelSlug,
    month: file.month,
    symptoms: read('symptoms').map(([symptom, present]) => ({ symptom, present: present === 1 })),
    symptomsComplete: file.complete,
    steps: read('steps').map((step) => stepOf(step, fixes)),
    readings: read('readings').map(
      ([designator, pin, state, value, unit]) => ({ designator, pin, state, value, unit }) as Reading,
    ),
    causes: read('causes').map(([position, cause]) => ({
      cause,
      designators: designators.filter(([of]) => of === position).map(([, designator]) => designator),
    })),
    proof: file.proof as CaseContent['proof'],
    provedByStep: file.provedByStep,
    outcome: file.outcome as CaseContent['outcome'],
    afterRepairChecks: read('afterChecks').map(([check]) => check),
    soakMinutes: file.soakMinutes,
    narrative: file.narrative,
  };
}

function stepOf([position, kind, check, outcome, ...cells]: Below['steps'][number], fixes: Below['fixes']): Step {
  const [designator, value, unit, result] = cells;
  if (kind === 'fix') {
    return {
      kind: 'fix',
      fixes: fixes.filter(([of]) => of === position).map(([, fix, at]) => ({ fix, designator: at })),
      result: result as Extract<Step, { kind: 'fix' }>['result'],
    };
  }
  if (check === null || outcome === null) throw new Error('A stored check has no outcome.');
  return { kind: 'check', check, outcome, designator, value, unit: unit as Extract<Step, { kind: 'check' }>['unit'] };
}
