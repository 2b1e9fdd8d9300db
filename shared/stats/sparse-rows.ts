import { type CellKeys, changeKey, clearKeys, createCellKeys, fetchKeys, forEachKey, growCellKeys, hasKey, placeOfKey } from './cell-keys';
import { FILLED, type Filling } from './filling';

/** Cells per block of storage, unless one row needs more. */
const BLOCK_CELLS = 1 << 16;
/** Room that a new row gets, in cells. */
const FIRST_ROOM = 8;

/** Narrow cells count in these: a tenth of a record, as one cause weighs. Others are wide, and count in ones. */
export const NARROW_UNIT = 60;
const MOST_NARROW = 65_535 * NARROW_UNIT;

type Block = { counts: Uint16Array | Int32Array; unit: number; filling: Filling };

/**
 * Many rows of counts, each over the numbers 0 to before `width`, of which only cells other than zero are kept: per row a
 * stretch of counts in the order of their keys, in a few large blocks instead of one array per row, and a bit for each number.
 * A cell takes two bytes as long as all counts of its row are whole tenths of a record and not too many, else four.
 */
export type SparseRows = {
  readonly keys: CellKeys;
  /** Per row: its block, where it begins there, how many cells it has and has room for. */
  block: Uint16Array;
  start: Uint32Array;
  cells: Uint16Array;
  room: Uint16Array;
  /** Rows given out so far, freed ones included. */
  rows: number;
  readonly free: number[];
  readonly blocks: Block[];
  /** The blocks that new room is taken from, and how many of their cells are given out. */
  readonly open: Record<'narrow' | 'wide', { block: number; used: number }>;
};

const FIRST_ROWS = 64;

/** No rows; keys are 0 to before `width`. */
export function createSparseRows(width: number): SparseRows {
  return {
    keys: createCellKeys(width, FIRST_ROWS),
    block: new Uint16Array(FIRST_ROWS),
    start: new Uint32Array(FIRST_ROWS),
    cells: new Uint16Array(FIRST_ROWS),
    room: new Uint16Array(FIRST_ROWS),
    rows: 0,
    free: [],
    blocks: [],
    open: { narrow: { block: -1, used: 0 }, wide: { block: -1, used: 0 } },
  };
}

/** A new row without cells; returns its number. */
export function takeRow(store: SparseRows): number {
  const again = store.free.pop();
  if (again !== undefined) return again;
  if (store.rows === store.start.length) {
    // An eighth more once there are many: their bits are most of it.
    const size = store.rows + Math.max(FIRST_ROWS, store.rows >> (store.rows < 4_096 ? 0 : 3));
    store.block = grown(store.block, new Uint16Array(size));
    store.start = grown(store.start, new Uint32Array(size));
    store.cells = grown(store.cells, new Uint16Array(size));
    store.room = grown(store.room, new Uint16Array(size));
    growCellKeys(store.keys, size);
  }
  return store.rows++;
}

/** Gives a row back; its room stays with its number, which is used again. */
export function freeRow(store: SparseRows, row: number): void {
  fetchKeys(store.keys, row);
  clearKeys(store.keys, row);
  store.cells[row] = 0;
  store.free.push(row);
}

/** Number of cells of a row that are not zero. */
export function cellCount(store: SparseRows, row: number): number {
  return store.cells[row] as number;
}

/** Adds `by` to the cells at `keys` (none twice). A cell that becomes zero goes. */
export function bumpCells(store: SparseRows, row: number, keys: ArrayLike<number>, by: number): void {
  fetchKeys(store.keys, row);
  if (by % NARROW_UNIT !== 0) widen(store, row);
  for (let i = 0; i < keys.length; i += 1) {
    const key = keys[i] as number;
    const place = placeOfKey(store.keys, row, key);
    if (!hasKey(store.keys, row, key)) insertCell(store, row, place, key);
    if (addToCell(store, row, place, by) === 0) removeCell(store, row, place, key);
  }
}

/** Adds to the cell at a place of a row, and returns what it counts then. */
function addToCell(store: SparseRows, row: number, place: number, by: number): number {
  let block = blockOf(store, row);
  const count = (block.counts[(store.start[row] as number) + place] as number) * block.unit + by;
  if (block.unit !== 1 && (count > MOST_NARROW || count < 0)) {
    widen(store, row);
    block = blockOf(store, row);
  }
  block.counts[(store.start[row] as number) + place] = count / block.unit;
  return count;
}

/** Adds the cells of a row from key `first` to before `end`, times `sign`, to `into[key - first]`. */
export function readCells(store: SparseRows, row: number, { first, end, into, sign }: { first: number; end: number; into: Float64Array; sign: 1 | -1 }): void {
  if ((store.cells[row] as number) === 0) return;
  const { keys } = store;
  fetchKeys(keys, row);
  const { counts, unit } = blockOf(store, row);
  const factor = sign * unit;
  let at = (store.start[row] as number) + placeOfKey(keys, row, first);
  for (let key = first; key < end; key += 1) {
    if (!hasKey(keys, row, key)) continue;
    into[key - first] = (into[key - first] as number) + factor * (counts[at] as number);
    at += 1;
  }
}

/** Calls `visit` for each cell of a row, in ascending order of keys. */
export function forEachCell(store: SparseRows, row: number, visit: (key: number, count: number) => void): void {
  fetchKeys(store.keys, row);
  const { counts, unit } = blockOf(store, row);
  let at = store.start[row] as number;
  forEachKey(store.keys, row, (key) => {
    visit(key, (counts[at] as number) * unit);
    at += 1;
  });
}

const NO_BLOCK: Block = { counts: new Uint16Array(0), unit: NARROW_UNIT, filling: FILLED };

/** The block of a row, whose cells are there after this. */
export function blockOf(store: SparseRows, row: number): Block {
  const block = store.blocks[store.block[row] as number];
  // A new row has no room anywhere yet.
  if (block === undefined || store.room[row] === 0) return NO_BLOCK;
  if (!block.filling.done) {
    const start = store.start[row] as number;
    block.filling.need(start, start + (store.cells[row] as number));
  }
  return block;
}

/** Makes a cell of count 0 at a place within a row. */
function insertCell(store: SparseRows, row: number, place: number, key: number): void {
  const cells = store.cells[row] as number;
  if (cells === (store.room[row] as number)) moveRow(store, row, blockOf(store, row).unit);
  const { counts } = blockOf(store, row);
  const start = store.start[row] as number;
  counts.copyWithin(start + place + 1, start + place, start + cells);
  counts[start + place] = 0;
  store.cells[row] = cells + 1;
  changeKey(store.keys, row, key, 1);
}

function removeCell(store: SparseRows, row: number, place: number, key: number): void {
  const cells = store.cells[row] as number;
  const { counts } = blockOf(store, row);
  const start = store.start[row] as number;
  counts.copyWithin(start + place, start + place + 1, start + cells);
  store.cells[row] = cells - 1;
  changeKey(store.keys, row, key, -1);
}

/** Lets a row count in ones. */
function widen(store: SparseRows, row: number): void {
  if (blockOf(store, row).unit !== 1) moveRow(store, row, 1);
}

/** Gives a row half as much room again, in the open block of its unit; what it had is left unused. */
function moveRow(store: SparseRows, row: number, unit: number): void {
  const cells = store.cells[row] as number;
  const room = Math.min(65_535, Math.max(FIRST_ROOM, cells + (cells >> 1)));
  const from = blockOf(store, row);
  const start = store.start[row] as number;
  const open = store.open[unit === 1 ? 'wide' : 'narrow'];
  let last = store.blocks[open.block];
  if (last === undefined || last.counts.length - open.used < room) {
    const size = Math.max(BLOCK_CELLS, room);
    last = { counts: unit === 1 ? new Int32Array(size) : new Uint16Array(size), unit, filling: FILLED };
    open.block = store.blocks.push(last) - 1;
    open.used = 0;
  }
  for (let i = 0; i < cells; i += 1) last.counts[open.used + i] = ((from.counts[start + i] as number) * from.unit) / unit;
  store.block[row] = open.block;
  store.start[row] = open.used;
  store.room[row] = room;
  open.used += room;
}

/** Copies cells into a longer array, and returns that. */
export function grown<T extends Uint16Array | Uint32Array>(from: ArrayLike<number>, into: T): T {
  into.set(from);
  return into;
}
