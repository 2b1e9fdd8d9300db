import { devicePath, distinctFindings, flatValue } from './findings';
import { type CodedRecord, type Layout, PROOF_WEIGHT_TENTHS } from './layout';
import { bumpCells, cellCount, createSparseRows, freeRow, type SparseRows, takeRow } from './sparse-rows';
import { stateCount, unitState } from './unit-state';

/** One whole record of full weight: tenths of proof weight times 60, so that one to six causes split exactly. */
export const COUNT_UNIT = 600;

/**
 * Everything that is counted, in integers (weights in units of 1/600 record), so that any sequence of adds and
 * retracts equals a rebuild bit for bit. Rows of value counts exist only where a record put something.
 */
export type Counts = {
  readonly layout: Layout;
  /** Rises with every change, so that whatever was computed from the counts can notice. */
  revision: number;
  /** Whole records per device node, its subtree included; and those whose cause was not found. */
  readonly records: Int32Array;
  readonly unresolved: Int32Array;
  /** `[node * causeCount + cause]`: whole records, and weights. */
  readonly causeRecords: Int32Array;
  readonly causeWeights: Int32Array;
  /** Weight of the records whose cause was found, per device node. */
  readonly resolvedWeights: Int32Array;
  /** Weights per flat value, in rows that the three maps name. */
  readonly rows: SparseRows;
  /** Row over the records of a cause below a node, by `node * causeCount + cause`. */
  readonly nodeRows: Map<number, number>;
  /**
   * The same over boards that carry one part class only, by `partRowKey`, above the boards: a board has one part of a
   * class, so its own row is its `nodeRows`.
   */
  readonly partRows: Map<number, number>;
  /** Weight per flat value over the records whose cause was not found. */
  readonly unresolvedValues: Int32Array;
  /** Weight per flat value over causes that the observable is about, and over those it is not. */
  readonly onTargetValues: Int32Array;
  readonly offTargetValues: Int32Array;
  /** Row over units in one state, by `state * causeCount + cause`; all devices together. */
  readonly stateRows: Map<number, number>;
  /** `[state * values + flat]`: the same over causes that the observable is not about. */
  readonly stateOffValues: Int32Array;
};

/** Values that the rows of counts can tell apart. */
const MOST_VALUES = 65_536;

/** Counts of no records. Throws RangeError for a layout of more than 65,536 values. */
export function createCounts(layout: Layout): Counts {
  if (valueTotal(layout) > MOST_VALUES) throw new RangeError(`A layout has at most ${MOST_VALUES} values.`);
  const nodes = layout.deviceParents.length;
  return {
    layout,
    revision: 0,
    records: new Int32Array(nodes),
    unresolved: new Int32Array(nodes),
    causeRecords: new Int32Array(nodes * layout.causeCount),
    causeWeights: new Int32Array(nodes * layout.causeCount),
    resolvedWeights: new Int32Array(nodes),
    rows: createSparseRows(valueTotal(layout)),
    nodeRows: new Map(),
    partRows: new Map(),
    unresolvedValues: new Int32Array(valueTotal(layout)),
    onTargetValues: new Int32Array(valueTotal(layout)),
    offTargetValues: new Int32Array(valueTotal(layout)),
    stateRows: new Map(),
    stateOffValues: new Int32Array(stateCount(layout) * valueTotal(layout)),
  };
}

/** Key of the row of a part class and a cause over the boards below a node. */
export function partRowKey(layout: Layout, { part, cause, node }: { part: number; cause: number; node: number }): number {
  return (part * layout.causeCount + cause) * layout.deviceParents.length + node;
}

/** Number of flat values of a layout. */
export function valueTotal(layout: Layout): number {
  return layout.valueStarts[layout.valueCounts.length] as number;
}

/** Adds one record. Throws RangeError where the record does not fit the layout; nothing is counted then. */
export function addRecord(counts: Counts, record: CodedRecord): void {
  change(counts, record, 1);
}

/** Takes one record out again: the exact inverse of `addRecord`. Throws RangeError where it was never in. */
export function retractRecord(counts: Counts, record: CodedRecord): void {
  change(counts, record, -1);
}

/** Weight, in 600ths, that a record gives to each of its causes. */
export function recordWeight(record: CodedRecord): number {
  if (record.causes.length === 0) return COUNT_UNIT;
  const tenths = PROOF_WEIGHT_TENTHS[record.proof];
  if (tenths === undefined) throw new RangeError(`No proof ${record.proof}.`);
  if (record.causes.length > 6) throw new RangeError('A record has at most six causes.');
  return (tenths * 60) / record.causes.length;
}

function change(counts: Counts, record: CodedRecord, sign: 1 | -1): void {
  const { layout } = counts;
  const path = devicePath(layout, record.device);
  const findings = distinctFindings(layout, record.findings);
  const values = findings.map((f) => flatValue(layout, f));
  const ascending = Uint16Array.from(values).sort();
  const weight = sign * recordWeight(record);
  const causes = [...new Set(record.causes)];
  if (causes.length !== record.causes.length) throw new RangeError('A record names each cause once.');
  for (const cause of causes) {
    if (!Number.isInteger(cause) || cause < 0 || cause >= layout.causeCount) throw new RangeError(`No cause ${cause}.`);
  }
  if (sign === -1) refuseUncounted(counts, path, causes);
  counts.revision += 1;
  for (const node of path) {
    bump(counts.records, node, sign);
    if (causes.length === 0) bump(counts.unresolved, node, sign);
  }
  if (causes.length === 0) for (const value of values) bump(counts.unresolvedValues, value, weight);
  const state = unitState(layout, findings);
  const stateStart = state * valueTotal(layout);
  for (const cause of causes) {
    findings.forEach(({ observable }, i) => {
      const on = layout.onTarget[observable * layout.causeCount + cause] === 1;
      bump(on ? counts.onTargetValues : counts.offTargetValues, values[i] as number, weight);
      if (state >= 0 && !on) bump(counts.stateOffValues, stateStart + (values[i] as number), weight);
    });
    if (state >= 0) bumpRow(counts, counts.stateRows, state * layout.causeCount + cause, { values: ascending, weight });
    const part = layout.partClasses[record.device * layout.causeCount + cause] as number;
    for (const node of path) {
      const key = node * layout.causeCount + cause;
      bump(counts.causeRecords, key, sign);
      bump(counts.causeWeights, key, weight);
      bump(counts.resolvedWeights, node, weight);
      bumpRow(counts, counts.nodeRows, key, { values: ascending, weight });
      if (part < 0 || node === record.device) continue;
      bumpRow(counts, counts.partRows, partRowKey(layout, { part, cause, node }), { values: ascending, weight });
    }
  }
}

function refuseUncounted(counts: Counts, path: readonly number[], causes: readonly number[]): void {
  const node = path[path.length - 1] as number;
  const missing =
    causes.length === 0
      ? (counts.unresolved[node] as number) === 0
      : causes.some((cause) => counts.causeRecords[node * counts.layout.causeCount + cause] === 0);
  if (missing) throw new RangeError('This record was never counted, so it cannot be retracted.');
}

function bump(cells: Int32Array, index: number, by: number): void {
  cells[index] = (cells[index] as number) + by;
}

function bumpRow(
  { rows }: Counts,
  places: Map<number, number>,
  key: number,
  { values, weight }: { values: Uint16Array; weight: number },
): void {
  if (values.length === 0) return;
  let row = places.get(key);
  if (row === undefined) {
    row = takeRow(rows);
    places.set(key, row);
  }
  bumpCells(rows, row, values, weight);
  // An emptied row goes, so that what is left is what a rebuild would hold.
  if (cellCount(rows, row) > 0) return;
  freeRow(rows, row);
  places.delete(key);
}
