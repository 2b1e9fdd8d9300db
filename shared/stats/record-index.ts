import { type BitWords, clearBit, hasBit, setBit } from './bit-set';
import { valueTotal } from './counts';
import { FILLED, type Filling } from './filling';
import { devicePath } from './findings';
import { type CodedRecord, FIX, type Layout, PROOF_WEIGHT_TENTHS, type RecordedFinding } from './layout';
import { createOddRows, type OddRows } from './odd-rows';
import { appendRow, createPostingList, type PostingList, withRoom } from './posting-list';
import { createRecordKeys, dropKey, type RecordKey, type RecordKeys, setKey } from './record-keys';
import { addWords, forEachAttempt, type RowLabels, readCauses, readFindings, rowLabels, type StoredRecord, storedRecord } from './record-words';
import { createScratch, type Scratch } from './scratch';

/** The column of lengths counts no further. */
const MOST_COUNTED = 255;

/** No cause in the column of first causes. */
export const NO_CAUSE = 0xffff;

/**
 * The records themselves and which of them carry which finding: columns of whole numbers by row, the rest of a record in
 * one long list of words, and rows in ascending order per value, cause and device. Rows are never used twice; one
 * that was taken out stays in the lists and is told by `live`. Rows and everything counted here is the same
 * whatever came and went before, but for the numbers of the rows.
 */
export type RecordIndex = {
  readonly layout: Layout;
  /** Observable of each flat value. */
  readonly observables: Uint16Array;
  /** Rows given out, and how many of them are not taken out again. */
  rows: number;
  size: number;
  /** A bit per row. */
  live: BitWords;
  device: Uint16Array;
  month: Uint16Array;
  /** See `record-words.ts`. */
  labels: Uint8Array;
  firstCause: Uint16Array;
  /** Number of findings, attempts after the cure included; 255 for more. */
  lengths: Uint8Array;
  /** Where a row's words begin. */
  starts: Uint32Array;
  words: Uint16Array;
  wordCount: number;
  /** Fetches words that are still in a file. */
  filling: Filling;
  readonly keys: RecordKeys;
  readonly byValue: readonly PostingList[];
  readonly byCause: readonly PostingList[];
  /** By the very device of the record, not those above it. */
  readonly byDevice: readonly PostingList[];
  /** Live rows that carry each flat value. */
  readonly carrying: Int32Array;
  /** Live records below each device node, those without a cause, and `[(node * causeCount + cause) * 4 + proof]`. */
  readonly total: Int32Array;
  readonly unresolved: Int32Array;
  readonly proofs: Int32Array;
  /** Attempts by result: `[node * fix values + flat - first fix value]`; fixes done together count each. */
  readonly attempts: Int32Array;
  /** The same over records of one cause: `[(flat - first fix value) * causeCount + cause]`. */
  readonly attemptsByCause: Int32Array;
  /** Room to work in, so that a question allocates nothing per record. */
  readonly scratch: Scratch;
  readonly odd: OddRows;
};

/** First flat value of a fix, and the number of flat values from there on; fixes come last in a layout. */
export function fixValues(layout: Layout): { first: number; count: number } {
  const fix = layout.kinds.indexOf(FIX);
  const first = fix < 0 ? valueTotal(layout) : (layout.valueStarts[fix] as number);
  return { first, count: valueTotal(layout) - first };
}

/** An index of no records. */
export function createRecordIndex(layout: Layout): RecordIndex {
  const nodes = layout.deviceParents.length;
  const fixes = fixValues(layout).count;
  const lists = (length: number) => Array.from({ length }, createPostingList);
  const observables = new Uint16Array(valueTotal(layout));
  layout.valueCounts.forEach((count, o) => {
    const start = layout.valueStarts[o] as number;
    observables.fill(o, start, start + count);
  });
  return {
    layout,
    observables,
    rows: 0,
    size: 0,
    live: new Uint32Array(1),
    device: new Uint16Array(16),
    month: new Uint16Array(16),
    labels: new Uint8Array(16),
    firstCause: new Uint16Array(16),
    lengths: new Uint8Array(16),
    starts: new Uint32Array(17),
    words: new Uint16Array(256),
    wordCount: 0,
    filling: FILLED,
    keys: createRecordKeys(),
    byValue: lists(valueTotal(layout)),
    byCause: lists(layout.causeCount),
    byDevice: lists(nodes),
    carrying: new Int32Array(valueTotal(layout)),
    total: new Int32Array(nodes),
    unresolved: new Int32Array(nodes),
    proofs: new Int32Array(nodes * layout.causeCount * PROOF_WEIGHT_TENTHS.length),
    attempts: new Int32Array(nodes * fixes),
    attemptsByCause: new Int32Array(fixes * layout.causeCount),
    scratch: createScratch(),
    odd: createOddRows(),
  };
}

/** What is kept of a record beside what the statistics count; all may be left out. */
export type RecordLabels = {
  /** Its name from outside; the row's number unless given. */
  key?: RecordKey;
  month?: number;
  /** 0 to 3. */
  outcome?: number;
  /** Whether its list of symptoms was complete. */
  complete?: boolean;
  /** Fixes tried after the one that cured: attempts, but no findings. */
  late?: readonly Pick<RecordedFinding, 'observable' | 'value' | 'step'>[];
  /** Per cause, whole numbers that name designators outside. */
  designators?: readonly (readonly number[])[];
};

/**
 * Adds a record and returns its row: the handle to retract it by. Implied findings are not kept. Throws RangeError where
 * the record does not fit the layout; nothing is added then.
 */
export function addToIndex(index: RecordIndex, record: CodedRecord, more: RecordLabels = {}): number {
  const stored = storedRecord(index.layout, record, more);
  devicePath(index.layout, stored.device);
  const row = index.rows;
  makeRoom(index, row + 1);
  setBit(index.live, row);
  index.device[row] = stored.device;
  index.month[row] = stored.month;
  index.labels[row] = rowLabels(stored, index.observables);
  index.firstCause[row] = stored.causes[0] ?? NO_CAUSE;
  index.lengths[row] = Math.min(MOST_COUNTED, stored.findings.length);
  addWords(index, row, stored);
  setKey(index.keys, row, more.key ?? [0, 0, row]);
  index.rows += 1;
  for (const value of statedValues(stored)) appendRow(index.byValue[value] as PostingList, row);
  for (const cause of stored.causes) appendRow(index.byCause[cause] as PostingList, row);
  appendRow(index.byDevice[stored.device] as PostingList, row);
  tally(index, row, { record: stored, sign: 1 });
  return row;
}

/** Takes the record in `row` out. Throws RangeError where there is none. */
export function retractFromIndex(index: RecordIndex, row: number): void {
  if (!isLive(index, row)) throw new RangeError(`No record in row ${row}.`);
  tally(index, row, { record: readRow(index, row), sign: -1 });
  clearBit(index.live, row);
  dropKey(index.keys, row);
}

/** The record in a row, taken out or not. */
export function readRow(index: RecordIndex, row: number): StoredRecord {
  const labels: RowLabels = index.labels[row] as number;
  return {
    device: index.device[row] as number,
    month: index.month[row] as number,
    ...readLabels(labels),
    findings: readFindings(index, row),
    ...readCauses(index, row),
  };
}

/** Whether the row was given out and not taken out again. */
export function isLive({ live, rows }: RecordIndex, row: number): boolean {
  return row < rows && hasBit(live, row);
}

/** Rows that are not taken out, one bit each: a copy. */
export function liveWords({ live, rows }: RecordIndex): BitWords {
  return live.slice(0, (rows + 31) >>> 5);
}

/** Rows that are not taken out, in ascending order. */
export function* liveRows(index: RecordIndex): Generator<number> {
  for (let row = 0; row < index.rows; row += 1) if (isLive(index, row)) yield row;
}

/** The flat values that a record states, ascending, none twice. */
export function statedValues({ findings }: StoredRecord): Uint16Array {
  return Uint16Array.from(new Set(findings.filter((f) => !f.late).map((f) => f.flat))).sort();
}

function readLabels(labels: RowLabels): Pick<StoredRecord, 'proof' | 'outcome' | 'complete'> {
  return { proof: (labels & 7) - 1, outcome: (labels >> 3) & 3, complete: (labels & 32) !== 0 };
}

function makeRoom(index: RecordIndex, rows: number): void {
  index.live = withRoom(index.live, (rows + 31) >>> 5);
  index.device = withRoom(index.device, rows);
  index.month = withRoom(index.month, rows);
  index.labels = withRoom(index.labels, rows);
  index.firstCause = withRoom(index.firstCause, rows);
  index.lengths = withRoom(index.lengths, rows);
  index.starts = withRoom(index.starts, rows + 1);
}

function tally(index: RecordIndex, row: number, { record, sign }: { record: StoredRecord; sign: 1 | -1 }): void {
  const { layout } = index;
  const C = layout.causeCount;
  const path = devicePath(layout, record.device);
  index.size += sign;
  for (const value of statedValues(record)) bump(index.carrying, value, sign);
  for (const node of path) {
    bump(index.total, node, sign);
    if (record.causes.length === 0) bump(index.unresolved, node, sign);
    for (const cause of record.causes) bump(index.proofs, (node * C + cause) * PROOF_WEIGHT_TENTHS.length + record.proof, sign);
  }
  const { first, count } = fixValues(layout);
  const alone = record.causes.length === 1 ? (record.causes[0] as number) : -1;
  forEachAttempt(index, row, first, (flat) => {
    for (const node of path) bump(index.attempts, node * count + flat - first, sign);
    if (alone >= 0) bump(index.attemptsByCause, (flat - first) * C + alone, sign);
  });
}

function bump(cells: Int32Array, at: number, by: number): void {
  cells[at] = (cells[at] as number) + by;
}
