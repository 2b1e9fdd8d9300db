import { type Counts, createCounts } from './counts';
import type { Layout } from './layout';
import { type Cells, fillFrom, type Sections, sectionOf } from './sections';
import { packRows, unpackRows } from './sparse-rows';

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

/** Copies of the arrays that counts are made of, rows packed without gaps. */
export function countsSections(counts: Counts): Sections {
  const dense = Object.fromEntries(DENSE.map((name): [string, Cells] => [`counts.${name}`, counts[name].slice()]));
  const rowNumbers = [...counts.nodeRows.values(), ...counts.partRows.values(), ...counts.stateRows.values()];
  const { lengths, keys, counts: cells } = packRows(counts.rows, rowNumbers);
  return {
    ...dense,
    // Keys of part rows can be beyond 32 bits.
    'counts.nodeKeys': Float64Array.from(counts.nodeRows.keys()),
    'counts.partKeys': Float64Array.from(counts.partRows.keys()),
    'counts.stateKeys': Float64Array.from(counts.stateRows.keys()),
    'counts.rowLengths': lengths,
    'counts.cellKeys': keys,
    'counts.cells': cells,
  };
}

/** Counts of their sections, which they keep: hand them over. Throws RangeError where they belong to another layout. */
export function countsFromSections(layout: Layout, sections: Sections): Counts {
  const counts = createCounts(layout);
  for (const name of DENSE) fillFrom(sections, `counts.${name}`, counts[name]);
  const nodeKeys = sectionOf(sections, 'counts.nodeKeys', new Float64Array(0));
  const partKeys = sectionOf(sections, 'counts.partKeys', new Float64Array(0));
  nodeKeys.forEach((key, row) => counts.nodeRows.set(key, row));
  partKeys.forEach((key, row) => counts.partRows.set(key, nodeKeys.length + row));
  const stateKeys = sectionOf(sections, 'counts.stateKeys', new Float64Array(0));
  stateKeys.forEach((key, row) => counts.stateRows.set(key, nodeKeys.length + partKeys.length + row));
  unpackRows(counts.rows, {
    lengths: sectionOf(sections, 'counts.rowLengths', new Uint16Array(0)),
    keys: sectionOf(sections, 'counts.cellKeys', new Uint16Array(0)),
    counts: sectionOf(sections, 'counts.cells', new Int32Array(0)),
  });
  return counts;
}
