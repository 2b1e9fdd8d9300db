import type { ContentProblem } from '../../../shared/domain/casebook/check-content';
import type { CaseRecord } from '../../../shared/schemas/case';
import {
  entriesOf,
  readCause,
  readReading,
  readStep,
  readSymptom,
  writeCauses,
  writeReadings,
  writeSteps,
  writeSymptoms,
} from './list-syntax';

/** Columns of a CSV file of cases, in the order in which they are written; a file may have them in any order. */
export const CSV_COLUMNS = [
  'id',
  'status',
  'device',
  'month',
  'symptoms',
  'symptomsComplete',
  'steps',
  'readings',
  'causes',
  'proof',
  'provedByStep',
  'outcome',
  'afterRepairChecks',
  'soakMinutes',
  'narrative',
] as const;
export type CsvColumn = (typeof CSV_COLUMNS)[number];

/** A case as cells. */
export function csvCells({ id, status, content }: CaseRecord): Record<CsvColumn, string> {
  const cells: Record<CsvColumn, string> = {
    id,
    status,
    device: content.device,
    month: content.month,
    symptoms: writeSymptoms(content.symptoms),
    symptomsComplete: content.symptomsComplete ? 'yes' : 'no',
    steps: writeSteps(content.steps),
    readings: writeReadings(content.readings),
    causes: writeCauses(content.causes),
    proof: content.proof ?? '',
    provedByStep: content.provedByStep === null ? '' : String(content.provedByStep),
    outcome: content.outcome,
    afterRepairChecks: content.afterRepairChecks.join('; '),
    soakMinutes: content.soakMinutes === null ? '' : String(content.soakMinutes),
    narrative: content.narrative,
  };
  for (const column of CSV_COLUMNS) cells[column] = guarded(cells[column]);
  return cells;
}

/** Cells as a row for `readCaseRow`, and what could not be read of them. */
export function rowFromCells(cells: Partial<Record<string, string>>): {
  row: Record<string, unknown>;
  problems: ContentProblem[];
} {
  const problems: ContentProblem[] = [];
  const cell = (column: CsvColumn) => unguarded(cells[column] ?? '');
  const trimmed = (column: CsvColumn) => cell(column).trim();
  const list = <T>(column: CsvColumn, read: (entry: string) => T | null): T[] =>
    entriesOf(cell(column)).flatMap((entry) => {
      const value = read(entry);
      if (value === null)
        problems.push({ field: column, reason: `"${entry}" is not written as this column needs; see import --help.` });
      return value === null ? [] : [value];
    });
  const number = (column: CsvColumn): number | null => (trimmed(column) === '' ? null : Number(trimmed(column)));
  const row = {
    ...(trimmed('id') === '' ? {} : { id: trimmed('id') }),
    device: trimmed('device'),
    month: trimmed('month'),
    symptoms: list('symptoms', readSymptom),
    symptomsComplete: { yes: true, no: false }[trimmed('symptomsComplete').toLowerCase()],
    steps: list('steps', readStep),
    readings: list('readings', readReading),
    causes: list('causes', readCause),
    proof: trimmed('proof') || null,
    provedByStep: number('provedByStep'),
    outcome: trimmed('outcome'),
    afterRepairChecks: list('afterRepairChecks', (entry) => entry),
    soakMinutes: number('soakMinutes'),
    narrative: cell('narrative'),
  };
  if (row.symptomsComplete === undefined) problems.push({ field: 'symptomsComplete', reason: 'Write yes or no.' });
  return { row, problems };
}

/** A spreadsheet takes a cell that begins like this for a formula. */
const FORMULA = /^[=+\-@\t\r']/u;

/** The text, behind an apostrophe where a spreadsheet would take it for a formula. */
export const guarded = (text: string) => (FORMULA.test(text) ? `'${text}` : text);
const unguarded = (text: string) => (text.startsWith("'") && FORMULA.test(text.slice(1)) ? text.slice(1) : text);
