import { FILLED, type Filling } from './filling';

/** Cells per block of storage, unless one row needs more. */
const BLOCK_CELLS = 1 << 16;
/** Room that a new row gets, in cells. */
const FIRST_ROOM = 8;

type Block = { keys: Uint16Array; counts: Int32Array };

/**
 * Many rows of counts, each over the numbers 0 to 65,535, of which only cells other than zero are kept: per row a sorted
 * stretch of keys with their counts, six bytes a cell, in a few large blocks instead of one array per row.
 */
export type SparseRows = {
  /** Per row: its block, where it begins there, how many cells it has and has room for. */
  block: Uint16Array;
  start: Uint32Array;
  cells: Uint16Array;
  room: Uint16Array;
  /** Rows given out so far, freed ones included. */
  rows: number;
  readonly free: number[];
  readonly blocks: Block[];
  /** Cells given out in the last block. */
  used: number;
  /** Fetches cells of the first block that are still in a file. */
  filling: Filling;
};

/** No rows. */
export function createSparseRows(): SparseRows {
  return {
    block: new Uint16Array(64),
    start: new Uint32Array(64),
    cells: new Uint16Array(64),
    room: new Uint16Array(64),
    rows: 0,
    free: [],
    blocks: [],
    used: 0,
    filling: FILLED,
  };
}

/** A new row without cells; returns its number. */
export function takeRow(store: SparseRows): number {
  const again = store.free.pop();
  if (again !== undefined) return again;
  if (store.rows === store.start.length) {
    const size = store.rows * 2;
    store.block = grown(store.block, new Uint16Array(size));
    store.start = grown(store.start, new Uint32Array(size));
    store.cells = grown(store.cells, new Uint16Array(size));
    store.room = grown(store.room, new Uint16Array(size));
  }
  return store.rows++;
}

/** Gives a row back; its room stays with its number, which is used again. */
export function freeRow(store: SparseRows, row: number): void {
  store.cells[row] = 0;
  store.free.push(row);
}

/** Number of cells of a row that are not zero. */
export function cellCount(store: SparseRows, row: number): number {
  return store.cells[row] as number;
}

/** Adds `by` to the cells at `keys` (ascending, none twice). A cell that becomes zero goes. */
export function bumpCells(store: SparseRows, row: number, keys: ArrayLike<number>, by: number): void {
  let place = 0;
  let emptied = 0;
  for (let i = 0; i < keys.length; i += 1) {
    const key = keys[i] as number;
    const { keys: held, counts } = blockOf(store, row);
    const start = store.start[row] as number;
    const end = start + (store.cells[row] as number);
    let at = seek(held, start + place, end, key);
    if (at === end || held[at] !== key) at = insertCell(store, row, at - start, key);
    else if (counts[at] === -by) emptied += 1;
    const block = blockOf(store, row);
    block.counts[at] = (block.counts[at] as number) + by;
    place = at - (store.start[row] as number) + 1;
  }
  if (emptied > 0) dropZeros(store, row);
}

/** Adds the cells of a row from key `first` to before `end`, times `sign`, to `into[key - first]`. */
export function readCells(store: SparseRows, row: number, { first, end, into, sign }: { first: number; end: number; into: Float64Array; sign: 1 | -1 }): void {
  const { keys, counts } = blockOf(store, row);
  const start = store.start[row] as number;
  const last = start + (store.cells[row] as number);
  for (let at = seek(keys, start, last, first); at < last && (keys[at] as number) < end; at += 1) {
    const to = (keys[at] as number) - first;
    into[to] = (into[to] as number) + sign * (counts[at] as number);
  }
}

/** Calls `visit` for each cell of a row, in ascending order of keys. */
export function forEachCell(store: SparseRows, row: number, visit: (key: number, count: number) => void): void {
  const { keys, counts } = blockOf(store, row);
  const start = store.start[row] as number;
  for (let at = start; at < start + (store.cells[row] as number); at += 1) visit(keys[at] as number, counts[at] as number);
}

const NO_BLOCK: Block = { keys: new Uint16Array(0), counts: new Int32Array(0) };

function blockOf(store: SparseRows, row: number): Block {
  if (!store.filling.done && store.block[row] === 0) {
    const start = store.start[row] as number;
    store.filling.need(start, start + (store.cells[row] as number));
  }
  return store.blocks[store.block[row] as number] ?? NO_BLOCK;
}

/**
 * Place of the first key at or above `key`, between two places. Keys ascend, none twice, so that no more of them are below
 * `key` or above it than there are numbers: in a row that has most of its cells, that leaves next to nothing to search.
 */
function seek(keys: Uint16Array, from: number, to: number, key: number): number {
  if (from >= to) return to;
  const first = keys[from] as number;
  const last = keys[to - 1] as number;
  if (key <= first) return from;
  if (key > last) return to;
  let low = Math.max(from, to - 1 - (last - key));
  let high = Math.min(to, from + key - first);
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((keys[middle] as number) < key) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Makes a cell of count 0 at a place within a row; returns where it stands in the row's block. */
function insertCell(store: SparseRows, row: number, place: number, key: number): number {
  const cells = store.cells[row] as number;
  if (cells === (store.room[row] as number)) moveRow(store, row);
  const { keys, counts } = blockOf(store, row);
  const start = store.start[row] as number;
  keys.copyWithin(start + place + 1, start + place, start + cells);
  counts.copyWithin(start + place + 1, start + place, start + cells);
  keys[start + place] = key;
  counts[start + place] = 0;
  store.cells[row] = cells + 1;
  return start + place;
}

/** Gives a row half as much room again, at the end of the last block; what it had is left unused. */
function moveRow(store: SparseRows, row: number): void {
  const cells = store.cells[row] as number;
  const room = Math.min(65_535, Math.max(FIRST_ROOM, cells + (cells >> 1)));
  const from = blockOf(store, row);
  const start = store.start[row] as number;
  let last = store.blocks[store.blocks.length - 1];
  if (last === undefined || last.keys.length - store.used < room) {
    const size = Math.max(BLOCK_CELLS, room);
    last = { keys: new Uint16Array(size), counts: new Int32Array(size) };
    store.blocks.push(last);
    store.used = 0;
  }
  last.keys.set(from.keys.subarray(start, start + cells), store.used);
  last.counts.set(from.counts.subarray(start, start + cells), store.used);
  store.block[row] = store.blocks.length - 1;
  store.start[row] = store.used;
  store.room[row] = room;
  store.used += room;
}

function dropZeros(store: SparseRows, row: number): void {
  const { keys, counts } = blockOf(store, row);
  const start = store.start[row] as number;
  const end = start + (store.cells[row] as number);
  let to = start;
  for (let at = start; at < end; at += 1) {
    if (counts[at] === 0) continue;
    keys[to] = keys[at] as number;
    counts[to] = counts[at] as number;
    to += 1;
  }
  store.cells[row] = to - start;
}

function grown<T extends Uint16Array | Uint32Array>(from: T, into: T): T {
  into.set(from);
  return into;
}

/** Rows one after another without gaps: how many cells each has, then all keys and counts. */
export type PackedRows = { lengths: Uint16Array; keys: Uint16Array; counts: Int32Array };

/** Packs the rows named, in that order. */
export function packRows(store: SparseRows, rows: readonly number[]): PackedRows {
  const lengths = Uint16Array.from(rows, (row) => store.cells[row] as number);
  const total = lengths.reduce((sum, n) => sum + n, 0);
  const packed = { lengths, keys: new Uint16Array(total), counts: new Int32Array(total) };
  let at = 0;
  for (const row of rows) {
    const { keys, counts } = blockOf(store, row);
    const start = store.start[row] as number;
    const end = start + (store.cells[row] as number);
    packed.keys.set(keys.subarray(start, end), at);
    packed.counts.set(counts.subarray(start, end), at);
    at += end - start;
  }
  return packed;
}

/** Makes packed rows the rows of an empty store, numbered from 0; the arrays become its first block, fetched row by row. */
export function unpackRows(store: SparseRows, { lengths, keys, counts }: PackedRows, filling: Filling): void {
  store.filling = filling;
  store.blocks.push({ keys, counts });
  store.used = keys.length;
  store.rows = lengths.length;
  store.block = new Uint16Array(lengths.length + 64);
  store.cells = grown(lengths, new Uint16Array(lengths.length + 64));
  store.room = store.cells.slice();
  store.start = new Uint32Array(lengths.length + 64);
  let at = 0;
  for (let row = 0; row < lengths.length; row += 1) {
    store.start[row] = at;
    at += lengths[row] as number;
  }
  if (at !== keys.length || at !== counts.length) throw new RangeError('The packed rows do not fit their lengths.');
}
