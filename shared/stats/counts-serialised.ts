import { type Counts, createCounts, valueTotal } from './counts';
import type { Layout } from './layout';
import { bumpCells, forEachCell, takeRow } from './sparse-rows';
import { stateCount } from './unit-state';

export const COUNTS_VERSION = 3;

/** Counts as plain JSON: only cells that are not zero, as `[index, count]` pairs in ascending order. */
export type SerialisedCounts = {
  version: number;
  shape: { causes: number; devices: number; values: number; partClasses: number; states: number };
  records: [number, number][];
  unresolved: [number, number][];
  causeRecords: [number, number][];
  causeWeights: [number, number][];
  resolvedWeights: [number, number][];
  nodeRows: [number, [number, number][]][];
  partRows: [number, [number, number][]][];
  unresolvedValues: [number, number][];
  onTargetValues: [number, number][];
  offTargetValues: [number, number][];
  stateRows: [number, [number, number][]][];
  stateOffValues: [number, number][];
};

/** The counts in a plain, versioned form; equal counts give equal forms. */
export function serialiseCounts(counts: Counts): SerialisedCounts {
  return {
    version: COUNTS_VERSION,
    shape: shapeOf(counts.layout),
    records: sparse(counts.records),
    unresolved: sparse(counts.unresolved),
    causeRecords: sparse(counts.causeRecords),
    causeWeights: sparse(counts.causeWeights),
    resolvedWeights: sparse(counts.resolvedWeights),
    nodeRows: sparseRows(counts, counts.nodeRows),
    partRows: sparseRows(counts, counts.partRows),
    unresolvedValues: sparse(counts.unresolvedValues),
    onTargetValues: sparse(counts.onTargetValues),
    offTargetValues: sparse(counts.offTargetValues),
    stateRows: sparseRows(counts, counts.stateRows),
    stateOffValues: sparse(counts.stateOffValues),
  };
}

/** Counts from their serialised form. Throws where it has another version or was made for another layout. */
export function deserialiseCounts(layout: Layout, from: SerialisedCounts): Counts {
  if (from.version !== COUNTS_VERSION) {
    throw new Error(`Counts of version ${from.version} cannot be read; this program reads ${COUNTS_VERSION}. Rebuild them.`);
  }
  const shape = shapeOf(layout);
  if (JSON.stringify(from.shape) !== JSON.stringify(shape)) {
    throw new Error('These counts belong to another vocabulary or catalogue. Rebuild them.');
  }
  const counts = createCounts(layout);
  fill(counts.records, from.records);
  fill(counts.unresolved, from.unresolved);
  fill(counts.causeRecords, from.causeRecords);
  fill(counts.causeWeights, from.causeWeights);
  fill(counts.resolvedWeights, from.resolvedWeights);
  fill(counts.unresolvedValues, from.unresolvedValues);
  fill(counts.onTargetValues, from.onTargetValues);
  fill(counts.offTargetValues, from.offTargetValues);
  fill(counts.stateOffValues, from.stateOffValues);
  fillRows(counts, counts.stateRows, from.stateRows);
  fillRows(counts, counts.nodeRows, from.nodeRows);
  fillRows(counts, counts.partRows, from.partRows);
  return counts;
}

function shapeOf(layout: Layout): SerialisedCounts['shape'] {
  return {
    causes: layout.causeCount,
    devices: layout.deviceParents.length,
    values: valueTotal(layout),
    partClasses: layout.partClassCount,
    states: stateCount(layout),
  };
}

function sparse(cells: Int32Array): [number, number][] {
  const pairs: [number, number][] = [];
  cells.forEach((count, index) => {
    if (count !== 0) pairs.push([index, count]);
  });
  return pairs;
}

function sparseRows({ rows }: Counts, places: ReadonlyMap<number, number>): [number, [number, number][]][] {
  return [...places]
    .sort((a, b) => a[0] - b[0])
    .map(([key, row]) => {
      const pairs: [number, number][] = [];
      forEachCell(rows, row, (value, count) => pairs.push([value, count]));
      return [key, pairs];
    });
}

function fill(cells: Int32Array, pairs: readonly [number, number][]): void {
  for (const [index, count] of pairs) cells[index] = count;
}

function fillRows({ rows }: Counts, places: Map<number, number>, from: readonly [number, [number, number][]][]): void {
  for (const [key, pairs] of from) {
    const row = takeRow(rows);
    for (const [value, count] of pairs) bumpCells(rows, row, [value], count);
    places.set(key, row);
  }
}
