import { type Counts, createCounts } from './counts';
import type { Layout } from './layout';
import { type Cells, fillFrom, type Sections, sectionOf, type StoredSections, storedSection } from './sections';
import { packRows, unpackRows } from './packed-rows';

const DENSE = [
  'records',
  'unresolved',
  'causeRecords',
  'causeWeights',
  'resolvedWeights',
  'unresolvedValues',
  'onTargetValues',
  'offTargetValues',
  'stateOffValues',
] as const;

/** Key of a row, and its number. */
type Pair = [number, number];

/** Copies of the arrays that counts are made of, rows packed without gaps. */
export function countsSections(counts: Counts): Sections {
  const dense = Object.fromEntries(DENSE.map((name): [string, Cells] => [`counts.${name}`, counts[name].slice()]));
  // In the order of their keys, so that the rows of one device node stand together.
  const [nodes, parts, states] = [counts.nodeRows, counts.partRows, counts.stateRows].map((rows) => [...rows].sort(([a], [b]) => a - b)) as [Pair[], Pair[], Pair[]];
  const rowNumbers = [...nodes, ...parts, ...states].map(([, row]) => row);
  const { lengths, isWide, bits, before, narrow, wide } = packRows(counts.rows, rowNumbers);
  return {
    ...dense,
    // Keys of part rows can be beyond 32 bits.
    'counts.nodeKeys': Float64Array.from(nodes, ([key]) => key),
    'counts.partKeys': Float64Array.from(parts, ([key]) => key),
    'counts.stateKeys': Float64Array.from(states, ([key]) => key),
    'counts.rowLengths': lengths,
    'counts.rowIsWide': isWide,
    'counts.cellsBefore': before,
    'counts.cellKeys': bits,
    'counts.cells': narrow,
    'counts.wideCells': wide,
  };
}

/** Counts of their sections, which they keep: hand them over. Cells of rows are fetched when first needed. Throws RangeError where they belong to another layout. */
export function countsFromSections(layout: Layout, sections: StoredSections): Counts {
  const counts = createCounts(layout);
  for (const name of DENSE) fillFrom(sections, `counts.${name}`, counts[name]);
  const nodeKeys = sectionOf(sections, 'counts.nodeKeys', new Float64Array(0));
  const partKeys = sectionOf(sections, 'counts.partKeys', new Float64Array(0));
  nodeKeys.forEach((key, row) => counts.nodeRows.set(key, row));
  partKeys.forEach((key, row) => counts.partRows.set(key, nodeKeys.length + row));
  const stateKeys = sectionOf(sections, 'counts.stateKeys', new Float64Array(0));
  stateKeys.forEach((key, row) => counts.stateRows.set(key, nodeKeys.length + partKeys.length + row));
  const none = new Uint16Array(0);
  const bits = storedSection(sections, 'counts.cellKeys', new Uint32Array(0));
  const [narrow, wide] = [storedSection(sections, 'counts.cells', none), storedSection(sections, 'counts.wideCells', new Int32Array(0))];
  const packed = {
    lengths: sectionOf(sections, 'counts.rowLengths', none),
    isWide: sectionOf(sections, 'counts.rowIsWide', new Uint8Array(0)),
    before: sectionOf(sections, 'counts.cellsBefore', none),
    bits: bits.cells,
    narrow: narrow.cells,
    wide: wide.cells,
  };
  unpackRows(counts.rows, packed, { bits: bits.filling, narrow: narrow.filling, wide: wide.filling });
  return counts;
}
