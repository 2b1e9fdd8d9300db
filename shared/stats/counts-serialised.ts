import { type Counts, createCounts, valueTotal } from './counts';
import type { Layout } from './layout';

export const COUNTS_VERSION = 1;

/** Counts as plain JSON: only cells that are not zero, as `[index, count]` pairs in ascending order. */
export type SerialisedCounts = {
  version: number;
  shape: { causes: number; devices: number; values: number; partClasses: number };
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
    nodeRows: sparseRows(counts.nodeRows),
    partRows: sparseRows(counts.partRows),
    unresolvedValues: sparse(counts.unresolvedValues),
    onTargetValues: sparse(counts.onTargetValues),
    offTargetValues: sparse(counts.offTargetValues),
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
  fillRows(counts.nodeRows, from.nodeRows, shape.values);
  fillRows(counts.partRows, from.partRows, shape.values);
  return counts;
}

function shapeOf(layout: Layout): SerialisedCounts['shape'] {
  return {
    causes: layout.causeCount,
    devices: layout.deviceParents.length,
    values: valueTotal(layout),
    partClasses: layout.partClassCount,
  };
}

function sparse(cells: Int32Array): [number, number][] {
  const pairs: [number, number][] = [];
  cells.forEach((count, index) => {
    if (count !== 0) pairs.push([index, count]);
  });
  return pairs;
}

function sparseRows(rows: ReadonlyMap<number, Int32Array>): [number, [number, number][]][] {
  return [...rows].sort((a, b) => a[0] - b[0]).map(([key, row]) => [key, sparse(row)]);
}

function fill(cells: Int32Array, pairs: readonly [number, number][]): void {
  for (const [index, count] of pairs) cells[index] = count;
}

function fillRows(rows: Map<number, Int32Array>, from: readonly [number, [number, number][]][], values: number): void {
  for (const [key, pairs] of from) {
    const row = new Int32Array(values);
    fill(row, pairs);
    rows.set(key, row);
  }
}
