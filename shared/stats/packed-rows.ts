import type { Filling } from './filling';
import { blockOf, grown, NARROW_UNIT, type SparseRows } from './sparse-rows';

/** Cells of rows one after another without gaps. */
export type PackedCells<T extends Uint16Array | Int32Array = Uint16Array | Int32Array> = { keys: Uint16Array; counts: T };
/** How many cells each row has, whether they are wide, and the cells of the narrow and of the wide ones. */
export type PackedRows = { lengths: Uint16Array; isWide: Uint8Array; narrow: PackedCells<Uint16Array>; wide: PackedCells<Int32Array> };

/** Packs the rows named, in that order. */
export function packRows(store: SparseRows, rows: readonly number[]): PackedRows {
  for (const { filling, keys } of store.blocks) filling.need(0, keys.length);
  const lengths = Uint16Array.from(rows, (row) => store.cells[row] as number);
  const isWide = Uint8Array.from(rows, (row) => (blockOf(store, row).unit === 1 ? 1 : 0));
  const total = (kind: number) => lengths.reduce((sum, n, i) => sum + (isWide[i] === kind ? n : 0), 0);
  const narrow = { keys: new Uint16Array(total(0)), counts: new Uint16Array(total(0)) };
  const wide = { keys: new Uint16Array(total(1)), counts: new Int32Array(total(1)) };
  const used = [0, 0];
  rows.forEach((row, i) => {
    const { keys, counts } = blockOf(store, row);
    const start = store.start[row] as number;
    const end = start + (lengths[i] as number);
    const kind = isWide[i] as number;
    const into = kind === 1 ? wide : narrow;
    into.keys.set(keys.subarray(start, end), used[kind]);
    into.counts.set(counts.subarray(start, end), used[kind]);
    used[kind] = (used[kind] as number) + end - start;
  });
  return { lengths, isWide, narrow, wide };
}

/** Makes packed rows the rows of an empty store, numbered from 0; the arrays become its first blocks, fetched row by row. */
export function unpackRows(store: SparseRows, packed: PackedRows, fillings: { narrow: Filling; wide: Filling }): void {
  const { lengths, isWide, narrow, wide } = packed;
  store.blocks.push({ ...narrow, unit: NARROW_UNIT, filling: fillings.narrow }, { ...wide, unit: 1, filling: fillings.wide });
  store.open.narrow = { block: 0, used: narrow.keys.length };
  store.open.wide = { block: 1, used: wide.keys.length };
  store.rows = lengths.length;
  store.block = grown(isWide, new Uint16Array(lengths.length + 64));
  store.cells = grown(lengths, new Uint16Array(lengths.length + 64));
  store.room = store.cells.slice();
  store.start = new Uint32Array(lengths.length + 64);
  const used = [0, 0];
  for (let row = 0; row < lengths.length; row += 1) {
    const kind = isWide[row] as number;
    store.start[row] = used[kind] as number;
    used[kind] = (used[kind] as number) + (lengths[row] as number);
  }
  const fits = [narrow, wide].every(({ keys, counts }, kind) => keys.length === used[kind] && counts.length === used[kind]);
  if (!fits) throw new RangeError('The packed rows do not fit their lengths.');
}
