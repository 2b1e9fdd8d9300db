import { COUNT_UNIT, type Counts, createCounts, valueTotal } from './counts';
import type { Layout } from './layout';
import { bumpCells, forEachCell, takeRow } from './sparse-rows';
import { stateCount } from './unit-state';

export const PACKED_COUNTS_VERSION = 3;

/**
 * Counts as lists of small whole numbers, about half the size of their serialised form once compressed. A list is pairs of a step from
 * the index before and a count; rows are lists with the step of their key and their length in front.
 */
export type PackedCounts = {
  version: number;
  /** Causes, device nodes, values, part classes, states: what they were packed with. */
  shape: readonly number[];
  lists: readonly (readonly number[])[];
  nodeRows: readonly number[];
  partRows: readonly number[];
  stateRows: readonly number[];
};

/** Most counts are whole tenths of a record: these are told by an even number, any others by an odd one. */
const TENTH = COUNT_UNIT / 10;

/** Packs counts; equal counts give equal packs. */
export function packCounts(counts: Counts): PackedCounts {
  return {
    version: PACKED_COUNTS_VERSION,
    shape: shapeOf(counts.layout),
    lists: listsOf(counts).map((cells) => packCells(cells)),
    nodeRows: packRows(counts, counts.nodeRows),
    partRows: packRows(counts, counts.partRows),
    stateRows: packRows(counts, counts.stateRows),
  };
}

/** The counts of a pack. Throws where it has another version or was made for another layout. */
export function unpackCounts(layout: Layout, packed: PackedCounts): Counts {
  if (packed.version !== PACKED_COUNTS_VERSION) throw new Error(`Packed counts of version ${packed.version} cannot be read.`);
  if (packed.shape.join() !== shapeOf(layout).join()) throw new Error('These counts belong to another vocabulary or catalogue.');
  const counts = createCounts(layout);
  listsOf(counts).forEach((cells, i) => unpackCells(packed.lists[i] ?? [], cells));
  unpackRows(packed.nodeRows, counts, counts.nodeRows);
  unpackRows(packed.partRows, counts, counts.partRows);
  unpackRows(packed.stateRows, counts, counts.stateRows);
  return counts;
}

const shapeOf = (layout: Layout) => [layout.causeCount, layout.deviceParents.length, valueTotal(layout), layout.partClassCount, stateCount(layout)];

function listsOf(counts: Counts): Int32Array[] {
  const { records, unresolved, causeRecords, causeWeights, resolvedWeights } = counts;
  const { unresolvedValues, onTargetValues, offTargetValues, stateOffValues } = counts;
  const whole = [records, unresolved, causeRecords, causeWeights, resolvedWeights];
  return [...whole, unresolvedValues, onTargetValues, offTargetValues, stateOffValues];
}

const packCount = (count: number) => (count % TENTH === 0 ? (count / TENTH) * 2 : count * 2 + 1);
const unpackCount = (packed: number) => (packed % 2 === 0 ? (packed / 2) * TENTH : (packed - 1) / 2);

function packCells(cells: Int32Array): number[] {
  const list: number[] = [];
  let before = 0;
  cells.forEach((count, index) => {
    if (count === 0) return;
    list.push(index - before, packCount(count));
    before = index;
  });
  return list;
}

function unpackCells(list: readonly number[], into: Int32Array): void {
  let index = 0;
  for (let at = 0; at < list.length; at += 2) {
    index += list[at] as number;
    into[index] = unpackCount(list[at + 1] as number);
  }
}

function packRows({ rows }: Counts, places: ReadonlyMap<number, number>): number[] {
  const packed: number[] = [];
  let before = 0;
  for (const [key, row] of [...places].sort((a, b) => a[0] - b[0])) {
    const cells: number[] = [];
    let value = 0;
    forEachCell(rows, row, (at, count) => {
      cells.push(at - value, packCount(count));
      value = at;
    });
    packed.push(key - before, cells.length, ...cells);
    before = key;
  }
  return packed;
}

function unpackRows(packed: readonly number[], { rows }: Counts, places: Map<number, number>): void {
  let key = 0;
  for (let at = 0; at < packed.length; ) {
    key += packed[at] as number;
    const end = at + 2 + (packed[at + 1] as number);
    const row = takeRow(rows);
    let value = 0;
    for (at += 2; at < end; at += 2) {
      value += packed[at] as number;
      bumpCells(rows, row, [value], unpackCount(packed[at + 1] as number));
    }
    places.set(key, row);
  }
}
