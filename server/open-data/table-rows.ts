import type { CaseRecord } from '../../shared/schemas/case';
import type { Vocabulary } from '../../shared/schemas/vocabulary';
import type { DeviceCatalogue } from '../../shared/schemas/device';
import { csvCells } from '../cli/case-files/csv-cells';
import type { Db } from '../db';
import { streamCases } from '../repositories/case-repository';
import { findCatalogue } from '../repositories/catalogue-repository';
import { loadVocabulary } from '../repositories/load-vocabulary';
import { streamWorkingUnits } from '../repositories/working-unit-repository';

export type Cell = string | number | boolean | null;
export type Row = Record<string, Cell>;
type Rows = (db: Db) => AsyncIterable<Row>;

const list = (values: readonly string[]) => values.join('; ');

/** What makes the rows of each CSV file, by the table's name. Cases and units are read in pages; the rest is small. */
export const TABLE_ROWS: Record<string, Rows> = {
  cases: (db) => perCase(db, (record) => [csvCells(record)]),
  'case-findings': (db) => perCase(db, findingRows),
  'case-causes': (db) =>
    perCase(db, ({ id, content }) =>
      content.causes.map(({ cause, designators }) => ({ caseId: id, cause, designators: designators.join(' ') })),
    ),
  'case-readings': (db) => perCase(db, ({ id, content }) => content.readings.map((reading) => ({ caseId: id, ...reading }))),
  'working-readings': workingRows,
  devices: (db) => fromCatalogue(db, deviceRows),
  'board-parts': (db) => fromCatalogue(db, partRows),
  roles: (db) =>
    fromVocabulary(db, ({ roles }) => roles.map(({ synonyms, ...role }) => ({ ...role, synonyms: list(synonyms) }))),
  symptoms: (db) => fromVocabulary(db, symptomRows),
  checks: (db) => fromVocabulary(db, checkRows),
  causes: (db) => fromVocabulary(db, causeRows),
  fixes: (db) => fromVocabulary(db, fixRows),
};

async function* perCase(db: Db, rowsOf: (record: CaseRecord) => Row[]): AsyncGenerator<Row> {
  for await (const record of streamCases(db, 'accepted')) yield* rowsOf(record);
}

function findingRows({ id, content }: CaseRecord): Row[] {
  const none = { designator: null, number: null, unit: null };
  return [
    ...content.symptoms.map(({ symptom, present }) => ({
      ...none,
      caseId: id,
      step: 0,
      kind: 'symptom',
      id: symptom,
      value: present ? 'present' : 'absent',
    })),
    ...content.steps.flatMap((step, at): Row[] => {
      const row = { ...none, caseId: id, step: at + 1, kind: step.kind };
      if (step.kind === 'fix') return step.fixes.map(({ fix, designator }) => ({ ...row, id: fix, value: step.result, designator }));
      const { check, outcome, designator, value, unit } = step;
      return [{ ...row, id: check, value: outcome, designator, number: value, unit }];
    }),
  ];
}

async function* workingRows(db: Db): AsyncGenerator<Row> {
  for await (const { id, device, month, readings } of streamWorkingUnits(db)) {
    for (const reading of readings) yield { unitId: id, device, month, ...reading };
  }
}

/** No rows where no device is stored yet. */
async function* fromCatalogue(db: Db, rowsOf: (catalogue: DeviceCatalogue) => Row[]): AsyncGenerator<Row> {
  const catalogue = await findCatalogue(db);
  if (catalogue !== null) yield* rowsOf(catalogue);
}

async function* fromVocabulary(db: Db, rowsOf: (vocabulary: Vocabulary) => Row[]): AsyncGenerator<Row> {
  yield* rowsOf(await loadVocabulary(db));
}

function deviceRows({ models }: DeviceCatalogue): Row[] {
  return models.flatMap(({ slug, name, maker, category, summary, boards }) => {
    const shared = { model: slug, name, maker: maker.name, category };
    return [
      { slug, ...shared, revision: null, summary },
      ...boards.map((board) => ({ slug: board.slug, ...shared, revision: board.revision, summary: board.summary })),
    ];
  });
}

function partRows({ models }: DeviceCatalogue): Row[] {
  return models
    .flatMap((model) => model.boards)
    .flatMap((board) => board.parts.map(({ pinNames: _, ...part }) => ({ board: board.slug, ...part })));
}

function symptomRows({ symptoms }: Vocabulary): Row[] {
  return symptoms.map(({ slug, label, meaning, area, categories, hiddenBy, synonyms }) => ({
    slug,
    label,
    meaning,
    area,
    categories: list(categories),
    hiddenBy: list(hiddenBy),
    synonyms: list(synonyms),
  }));
}

function checkRows({ checks }: Vocabulary): Row[] {
  return checks.map(({ slug, label, meaning, area, targetRole, stage, minutes, workingOutcome, howTo, ...lists }) => ({
    slug,
    label,
    meaning,
    area,
    targetRole,
    stage,
    minutes,
    workingOutcome,
    howTo,
    instruments: list(lists.instruments),
    cautions: list(lists.cautions),
    outcomes: list(lists.outcomes.map((outcome) => outcome.slug)),
    categories: list(lists.categories),
    synonyms: list(lists.synonyms),
  }));
}

function causeRows({ causes }: Vocabulary): Row[] {
  return causes.map(({ categories, synonyms, ...cause }) => ({ ...cause, categories: list(categories), synonyms: list(synonyms) }));
}

function fixRows({ fixes }: Vocabulary): Row[] {
  return fixes.map(({ slug, label, meaning, role, stage, minutes, partCostCents, first, howTo, ...lists }) => ({
    slug,
    label,
    meaning,
    role,
    stage,
    minutes,
    partCostLowCents: partCostCents.low,
    partCostHighCents: partCostCents.high,
    first,
    howTo,
    addresses: list(lists.addresses),
    cautions: list(lists.cautions),
    categories: list(lists.categories),
    synonyms: list(lists.synonyms),
  }));
}
