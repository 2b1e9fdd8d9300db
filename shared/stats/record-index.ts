import { type BitSet, clearBit, createBitSet, setBit } from './bit-set';
import { valueTotal } from './counts';
import { devicePath, flatValue } from './findings';
import type { CodedRecord, Layout } from './layout';

/** One record as the index keeps it; `values` are the flat values that were stated, implied absences left out. */
export type IndexedRecord = { device: number; causes: readonly number[]; proof: number; values: Int32Array };

/**
 * Which records carry which finding, as one set of rows per value and per device node, so that counting and
 * ranking never walk through the records. Rows of retracted records are used again.
 */
export type RecordIndex = {
  readonly layout: Layout;
  readonly rows: (IndexedRecord | undefined)[];
  readonly freeRows: number[];
  readonly all: BitSet;
  readonly byValue: (BitSet | undefined)[];
  readonly byDevice: (BitSet | undefined)[];
};

/** An index of no records. */
export function createRecordIndex(layout: Layout): RecordIndex {
  return {
    layout,
    rows: [],
    freeRows: [],
    all: createBitSet(),
    byValue: new Array<BitSet | undefined>(valueTotal(layout)),
    byDevice: new Array<BitSet | undefined>(layout.deviceParents.length),
  };
}

/** Adds a record and returns its row: the handle to retract it by. */
export function addToIndex(index: RecordIndex, record: CodedRecord): number {
  const stated = record.findings.filter((f) => !f.implied).map((f) => flatValue(index.layout, f));
  const values = Int32Array.from(new Set(stated)).sort();
  const path = devicePath(index.layout, record.device);
  const row = index.freeRows.pop() ?? index.rows.length;
  index.rows[row] = { device: record.device, causes: record.causes, proof: record.proof, values };
  setBit(index.all, row);
  for (const value of values) setBit(setAt(index.byValue, value), row);
  for (const node of path) setBit(setAt(index.byDevice, node), row);
  return row;
}

/** Takes the record in `row` out. Throws RangeError where there is none. */
export function retractFromIndex(index: RecordIndex, row: number): void {
  const record = index.rows[row];
  if (record === undefined) throw new RangeError(`No record in row ${row}.`);
  clearBit(index.all, row);
  for (const value of record.values) clearBit(setAt(index.byValue, value), row);
  for (const node of devicePath(index.layout, record.device)) clearBit(setAt(index.byDevice, node), row);
  index.rows[row] = undefined;
  index.freeRows.push(row);
}

function setAt(sets: (BitSet | undefined)[], at: number): BitSet {
  let set = sets[at];
  if (set === undefined) {
    set = createBitSet();
    sets[at] = set;
  }
  return set;
}
