import { CASE_OUTCOMES, type CaseContent, type CaseRecord, FIX_RESULTS, PROOFS } from '../../schemas/case';
import type { CodedRecord, RecordedFinding } from '../../stats/layout';
import { addToIndex, fixValues, type RecordIndex, readRow } from '../../stats/record-index';
import { forEachAttempt } from '../../stats/record-words';
import type { Coding } from '../coding/coding';
import { impliedAbsences } from '../coding/implied-absences';
import { caseOfKey, keyOfCase } from './case-key';
import { type NamePool, numberOfName } from './name-pool';

const EXCERPT_LENGTH = 180;

/** Fixes tried together, by observable, and the value of their result. */
export type FixAttempt = { fixes: readonly number[]; result: number };

/** What the model knows of an accepted case, put together from the index; its texts stay in the database. */
export type CaseEntry = {
  id: string;
  device: string;
  month: string;
  causes: CaseContent['causes'];
  proof: CaseContent['proof'];
  outcome: CaseContent['outcome'];
  attempts: readonly FixAttempt[];
  coded: CodedRecord;
};

/** What reading and writing of rows takes. */
export type CaseRows = { coding: Coding; index: RecordIndex; designators: NamePool };

/** Puts a coded case into the index and returns its row. */
export function addCaseRow({ coding, index, designators }: CaseRows, { id, content }: CaseRecord, coded: CodedRecord): number {
  const named = new Map<string, string[]>();
  for (const { cause, designators: parts } of content.causes) named.set(cause, [...(named.get(cause) ?? []), ...parts]);
  return addToIndex(index, coded, {
    key: keyOfCase(id) ?? undefined,
    month: monthNumber(content.month),
    outcome: CASE_OUTCOMES.indexOf(content.outcome),
    complete: content.symptomsComplete,
    late: lateAttempts(coding, content),
    designators: coded.causes.map((cause) => (named.get(coding.causes[cause] ?? '') ?? []).map((name) => numberOfName(designators, name))),
  });
}

/** Fixes tried after the one that cured, which `encodeCase` leaves out. */
function lateAttempts(coding: Coding, content: CaseContent): { observable: number; value: number; step: number }[] {
  const last = content.steps.findLastIndex((step) => step.kind === 'fix' && step.result === 'cured');
  if (last < 0) return [];
  return content.steps.flatMap((step, position) => {
    if (position <= last || step.kind !== 'fix') return [];
    return step.fixes.flatMap(({ fix }) => {
      const observable = coding.observableOf('fix', fix);
      return observable === undefined ? [] : [{ observable, value: FIX_RESULTS.indexOf(step.result), step: position + 1 }];
    });
  });
}

/** The case in a row. Allocates: for jobs that walk through the casebook, and for the few cases that are shown. */
export function caseEntry(rows: CaseRows, row: number): CaseEntry {
  const { coding, index, designators } = rows;
  const { device, month, proof, outcome, causes, designators: named } = readRow(index, row);
  const { high, middle, low } = index.keys;
  return {
    id: caseOfKey([high[row] as number, middle[row] as number, low[row] as number]),
    device: coding.devices[device]?.slug ?? '',
    month: monthText(month),
    causes: causes.map((cause, i) => ({
      cause: coding.causes[cause] as string,
      designators: (named[i] ?? []).map((number) => designators.names[number] as string),
    })),
    proof: PROOFS[proof] ?? null,
    outcome: CASE_OUTCOMES[outcome] as CaseContent['outcome'],
    attempts: attemptsOf(rows, row),
    coded: codedRecord(rows, row),
  };
}

/** A row as the statistics count it: stated symptoms, the absences that follow from them, then the steps. */
export function codedRecord({ coding, index }: CaseRows, row: number): CodedRecord {
  const { device, proof, complete, causes, findings } = readRow(index, row);
  const placed = findings
    .filter((f) => !f.late)
    .map(({ flat, step, proves }): RecordedFinding => {
      const observable = index.observables[flat] as number;
      const value = flat - (index.layout.valueStarts[observable] as number);
      return { observable, value, implied: false, step, stage: coding.observables[observable]?.stage ?? 0, proves };
    });
  const symptoms = placed.filter((f) => f.step === 0);
  const stated = new Map(symptoms.map((f) => [f.observable, f.value === 1]));
  const category = coding.devices[device]?.category ?? null;
  const implied = impliedAbsences(coding, { stated, category, complete }).map(
    (observable): RecordedFinding => ({ observable, value: 0, implied: true, step: 0, stage: 0, proves: false }),
  );
  return { device, causes, proof: causes.length === 0 ? -1 : proof, findings: [...symptoms, ...implied, ...placed.filter((f) => f.step > 0)] };
}

function attemptsOf({ index }: CaseRows, row: number): FixAttempt[] {
  const byStep = new Map<number, { fixes: number[]; result: number }>();
  const { first } = fixValues(index.layout);
  forEachAttempt(index, row, first, (flat, step) => {
    const observable = index.observables[flat] as number;
    const attempt = byStep.get(step) ?? { fixes: [], result: flat - (index.layout.valueStarts[observable] as number) };
    attempt.fixes.push(observable);
    byStep.set(step, attempt);
  });
  return [...byStep.values()];
}

/** A month, YYYY-MM, as months since the year 0. */
export function monthNumber(month: string): number {
  return Number(month.slice(0, 4)) * 12 + Number(month.slice(5, 7)) - 1;
}

/** YYYY-MM of a row's month. */
export function monthText(month: number): string {
  return `${String(Math.floor(month / 12)).padStart(4, '0')}-${String((month % 12) + 1).padStart(2, '0')}`;
}

/** The beginning of a narrative on one line, cut between words. */
export function excerptOf(narrative: string): string {
  const line = narrative.replace(/\s+/gu, ' ').trim();
  if (line.length <= EXCERPT_LENGTH) return line;
  const cut = line.slice(0, EXCERPT_LENGTH);
  const space = cut.lastIndexOf(' ');
  return `${(space > EXCERPT_LENGTH / 2 ? cut.slice(0, space) : cut).trimEnd()} …`;
}
