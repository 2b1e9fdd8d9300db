import { FILLED } from './filling';
import { flatValue } from './findings';
import { type CodedRecord, type Layout, PROOF_WEIGHT_TENTHS } from './layout';
import { withRoom } from './posting-list';
import { NO_CAUSE, type RecordIndex, type RecordLabels } from './record-index';
import { causesFrom, flatsFrom, infoAt, infoWords, statedEnd, TWO_WORDS, wordsOf } from './word-layout';

/**
 * A record as the index keeps it. Findings stand in the order of the record, implied ones left out; `late` ones are
 * fixes tried after the cure: attempts, but no findings. Designators are numbers that name them outside, per cause.
 */
export type StoredRecord = {
  device: number;
  month: number;
  proof: number;
  outcome: number;
  complete: boolean;
  findings: readonly StoredFinding[];
  causes: readonly number[];
  designators: readonly (readonly number[])[];
};

export type StoredFinding = { flat: number; step: number; proves: boolean; late: boolean };

/** Eight bits: proof + 1 (3), outcome (2), complete (1), two values of one observable (1), several causes (1). */
export type RowLabels = number;

/** Set where a row states two values of one observable. */
export const DOUBLED = 64;
/** Set where a row has more causes than its first. */
export const SEVERAL_CAUSES = 128;

const STEP_BITS = 127;
const PROVES = 128;
/** The number of findings has 15 bits. */
const MOST_FINDINGS = 32_767;

/** A record in the form that is kept. Throws RangeError where something does not fit the layout. */
export function storedRecord(layout: Layout, record: CodedRecord, more: RecordLabels): StoredRecord {
  const findings = record.findings
    .filter((f) => !f.implied)
    .map((f) => ({ flat: flatValue(layout, f), step: f.step, proves: f.proves, late: false }));
  for (const f of more.late ?? []) findings.push({ flat: flatValue(layout, f), step: f.step, proves: false, late: true });
  if (findings.length > MOST_FINDINGS) throw new RangeError(`A record has at most ${MOST_FINDINGS} findings.`);
  for (const { step } of findings) if (step < 0 || step > STEP_BITS) throw new RangeError(`A record has at most ${STEP_BITS} steps.`);
  for (const cause of record.causes) {
    if (!Number.isInteger(cause) || cause < 0 || cause >= layout.causeCount) throw new RangeError(`No cause ${cause}.`);
  }
  if (record.causes.length > 0 && PROOF_WEIGHT_TENTHS[record.proof] === undefined) throw new RangeError(`No proof ${record.proof}.`);
  return {
    device: record.device,
    month: more.month ?? 0,
    proof: record.proof,
    outcome: more.outcome ?? 0,
    complete: more.complete ?? false,
    findings,
    causes: record.causes,
    designators: record.causes.map((_, i) => more.designators?.[i] ?? []),
  };
}

/** The eight bits of a record. */
export function rowLabels(record: StoredRecord, observables: Uint16Array): RowLabels {
  const values = new Set(record.findings.filter((f) => !f.late).map((f) => f.flat));
  const named = new Set([...values].map((flat) => observables[flat]));
  return (
    (record.proof + 1) |
    (record.outcome << 3) |
    (record.complete ? 32 : 0) |
    (named.size < values.size ? DOUBLED : 0) |
    (record.causes.length > 1 ? SEVERAL_CAUSES : 0)
  );
}

/**
 * Writes a record's words at the end: twice the number of findings, one more where some are late, and how many of them then; the
 * flat values; two to a word, step and whether it proves; then per cause its number, how many designators, and these.
 */
export function addWords(index: RecordIndex, row: number, { findings, causes, designators }: StoredRecord): void {
  const late = findings.filter((f) => f.late).length;
  const named = designators.reduce((sum, list) => sum + list.reduce((words, designator) => words + wordsOf(designator), 0), 0);
  const length = (late > 0 ? 2 : 1) + findings.length + infoWords(findings.length) + causes.length * 2 + named;
  if (index.words.length < index.wordCount + length) {
    index.filling.need(0, index.wordCount);
    // It holds on to the words that are replaced here.
    index.filling = FILLED;
  }
  index.words = withRoom(index.words, index.wordCount + length);
  const { words } = index;
  let at = index.wordCount;
  index.starts[row] = at;
  words[at++] = findings.length * 2 + (late > 0 ? 1 : 0);
  if (late > 0) words[at++] = late;
  for (const { flat } of findings) words[at++] = flat;
  for (let i = 0; i < findings.length; i += 2) words[at++] = infoOf(findings[i]) | (infoOf(findings[i + 1]) << 8);
  causes.forEach((cause, i) => {
    const list = designators[i] ?? [];
    words[at++] = cause;
    words[at++] = list.length;
    for (const designator of list) {
      if (wordsOf(designator) === 2) words[at++] = TWO_WORDS | (designator >>> 16);
      words[at++] = designator & 0xffff;
    }
  });
  index.wordCount = at;
  index.starts[row + 1] = at;
}

const infoOf = (finding: StoredFinding | undefined) => (finding === undefined ? 0 : finding.step | (finding.proves ? PROVES : 0));

/** Where a row's words begin; they are there after this. */
function wordsFrom({ starts, filling }: RecordIndex, row: number): number {
  const start = starts[row] as number;
  if (!filling.done) filling.need(start, starts[row + 1] as number);
  return start;
}

/** The findings of a row. */
export function readFindings(index: RecordIndex, row: number): StoredFinding[] {
  const start = wordsFrom(index, row);
  const { words } = index;
  const first = flatsFrom(words, start);
  const stated = statedEnd(words, start) - first;
  return Array.from({ length: (words[start] as number) >>> 1 }, (_, i) => {
    const info = infoAt(words, start, i);
    return { flat: words[first + i] as number, step: info & STEP_BITS, proves: (info & PROVES) !== 0, late: i >= stated };
  });
}

/** The causes of a row with their designators. */
export function readCauses(index: RecordIndex, row: number): Pick<StoredRecord, 'causes' | 'designators'> {
  const causes: number[] = [];
  const designators: number[][] = [];
  const start = wordsFrom(index, row);
  const { starts, words } = index;
  const end = starts[row + 1] as number;
  for (let at = causesFrom(words, start); at < end; ) {
    causes.push(words[at] as number);
    const list: number[] = [];
    let left = words[at + 1] as number;
    for (at += 2; left > 0; left -= 1) {
      const word = words[at++] as number;
      list.push(word < TWO_WORDS ? word : (word - TWO_WORDS) * 65_536 + (words[at++] as number));
    }
    designators.push(list);
  }
  return { causes, designators };
}

/** Calls `visit` for each cause of a row. */
export function forEachCause(index: RecordIndex, row: number, visit: (cause: number) => void): void {
  const first = index.firstCause[row] as number;
  if (first === NO_CAUSE) return;
  visit(first);
  if (((index.labels[row] as number) & SEVERAL_CAUSES) !== 0) forEachFurtherCause(index, row, visit);
}

/** Calls `visit` for each cause of a row after its first. */
export function forEachFurtherCause(index: RecordIndex, row: number, visit: (cause: number) => void): void {
  readCauses(index, row).causes.slice(1).forEach((cause) => {
    visit(cause);
  });
}

/** Whether a row states the flat value. */
export function states(index: RecordIndex, row: number, flat: number): boolean {
  const start = wordsFrom(index, row);
  const { words } = index;
  const end = statedEnd(words, start);
  for (let at = flatsFrom(words, start); at < end; at += 1) if (words[at] === flat) return true;
  return false;
}

/** What a row gains: the gains of the flat values that it states, each once. */
export function rowGain(index: RecordIndex, row: number, byFlat: Float64Array): number {
  const start = wordsFrom(index, row);
  const { words } = index;
  const first = flatsFrom(words, start);
  const end = statedEnd(words, start);
  let sum = 0;
  for (let at = first; at < end; at += 1) {
    const gain = byFlat[words[at] as number] as number;
    if (gain !== 0 && !standsBefore(words, first, at)) sum += gain;
  }
  return sum;
}

function standsBefore(words: Uint16Array, first: number, at: number): boolean {
  for (let before = first; before < at; before += 1) if (words[before] === words[at]) return true;
  return false;
}

/** Calls `visit` with flat value and step of each attempt of a row: fixes from `firstFix` on, a fix named twice in one attempt once. */
export function forEachAttempt(index: RecordIndex, row: number, firstFix: number, visit: (flat: number, step: number) => void): void {
  const start = wordsFrom(index, row);
  const { words } = index;
  const first = flatsFrom(words, start);
  const findings = (words[start] as number) >>> 1;
  for (let i = 0; i < findings; i += 1) {
    const flat = words[first + i] as number;
    if (flat < firstFix) continue;
    const step = infoAt(words, start, i) & STEP_BITS;
    let before = i - 1;
    while (before >= 0 && (infoAt(words, start, before) & STEP_BITS) === step && words[first + before] !== flat) before -= 1;
    const again = before >= 0 && (infoAt(words, start, before) & STEP_BITS) === step;
    if (!again) visit(flat, step);
  }
}
