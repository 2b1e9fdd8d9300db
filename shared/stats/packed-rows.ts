import { fetchKeys } from './cell-keys';
import type { Filling } from './filling';
import { blockOf, grown, NARROW_UNIT, type SparseRows } from './sparse-rows';

/**
 * Rows one after another without gaps: how many cells each has, whether they are wide, which keys it has (see `CellKeys`), and the
 * counts of the narrow and of the wide ones.
 */
export type PackedRows = { lengths: Uint16Array; isWide: Uint8Array; bits: Uint32Array; before: Uint16Array; narrow: Uint16Array; wide: Int32Array };

/** Packs the rows named, in that order. */
export function packRows(store: SparseRows, rows: readonly number[]): PackedRows {
  const { keys } = store;
  for (const { filling, counts } of store.blocks) filling.need(0, counts.length);
  const lengths = Uint16Array.from(rows, (row) => store.cells[row] as number);
  const isWide = Uint8Array.from(rows, (row) => (blockOf(store, row).unit === 1 ? 1 : 0));
  const total = (kind: number) => lengths.reduce((sum, n, i) => sum + (isWide[i] === kind ? n : 0), 0);
  const [narrow, wide] = [new Uint16Array(total(0)), new Int32Array(total(1))];
  const bits = new Uint32Array(rows.length * keys.words);
  const before = new Uint16Array(rows.length * keys.groups);
  const used = [0, 0];
  rows.forEach((row, i) => {
    fetchKeys(keys, row);
    bits.set(keys.bits.subarray(row * keys.words, (row + 1) * keys.words), i * keys.words);
    before.set(keys.before.subarray(row * keys.groups, (row + 1) * keys.groups), i * keys.groups);
    const start = store.start[row] as number;
    const end = start + (lengths[i] as number);
    const kind = isWide[i] as number;
    (kind === 1 ? wide : narrow).set(blockOf(store, row).counts.subarray(start, end), used[kind]);
    used[kind] = (used[kind] as number) + end - start;
  });
  return { lengths, isWide, bits, before, narrow, wide };
}

/** Makes packed rows the rows of an empty store, numbered from 0; the counts become its first blocks, fetched row by row. */
export function unpackRows(store: SparseRows, packed: PackedRows, fillings: Record<'bits' | 'narrow' | 'wide', Filling>): void {
  const { lengths, isWide, bits, before, narrow, wide } = packed;
  const rows = lengths.length;
  store.blocks.push({ counts: narrow, unit: NARROW_UNIT, filling: fillings.narrow }, { counts: wide, unit: 1, filling: fillings.wide });
  store.open.narrow = { block: 0, used: narrow.length };
  store.open.wide = { block: 1, used: wide.length };
  store.rows = rows;
  // As long as there are rows: one more makes room for all of them.
  Object.assign(store.keys, { bits, before, filling: fillings.bits });
  store.block = grown(isWide, new Uint16Array(rows));
  store.cells = lengths;
  store.room = lengths.slice();
  store.start = new Uint32Array(rows);
  const used = [0, 0];
  for (let row = 0; row < rows; row += 1) {
    const kind = isWide[row] as number;
    store.start[row] = used[kind] as number;
    used[kind] = (used[kind] as number) + (lengths[row] as number);
  }
  const fits = narrow.length === used[0] && wide.length === used[1] && bits.length === rows * store.keys.words && before.length === rows * store.keys.groups;
  if (!fits) throw new RangeError('The packed rows do not fit their lengths.');
}
