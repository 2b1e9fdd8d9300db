import { type BitWords, setBit } from './bit-set';
import { bitRoom, listRoom, type Scratch, spareRoom } from './scratch';
import type { StoredCells } from './sections';

/** Rows in ascending order; `length` of them are in use. `dense` stands beside a long list once it was asked for. */
export type PostingList = { rows: Uint32Array; length: number; dense: DenseRows | null };

/** The first `known` rows of a list, a bit each. */
type DenseRows = { bits: BitWords; known: number };

const NONE = new Uint32Array(0);

/** A list of no rows. */
export function createPostingList(): PostingList {
  return { rows: NONE, length: 0, dense: null };
}

/** A stretch of stored rows as a list; its rows are fetched when they are first looked at. */
export function storedList({ cells, filling }: StoredCells<Uint32Array>, from: number, length: number): PostingList {
  let rows = cells.subarray(from, from + length);
  let isThere = filling.done;
  return {
    get rows() {
      if (!isThere) {
        filling.need(from, from + length);
        isThere = true;
      }
      return rows;
    },
    set rows(longer) {
      rows = longer;
      isThere = true;
    },
    length,
    dense: null,
  };
}

/** A list that holds at least one row in so many has its bits kept too: they take at most twice its own room. */
const DENSE_FROM = 64;

/**
 * A bit per row of a list that holds many of the rows there are, null for one that holds few. Made when first asked
 * for; rows appended since are added then.
 * @param rows every row of the list is below this
 */
export function denseBits(list: PostingList, rows: number): BitWords | null {
  if (list.length * DENSE_FROM < rows) return null;
  const words = (rows + 31) >>> 5;
  list.dense ??= { bits: new Uint32Array(words), known: 0 };
  const { dense } = list;
  if (dense.bits.length < words) dense.bits = withRoom(dense.bits, words);
  for (; dense.known < list.length; dense.known += 1) setBit(dense.bits, list.rows[dense.known] as number);
  return dense.bits;
}

/** Adds a row that is higher than every row in the list. */
export function appendRow(list: PostingList, row: number): void {
  if (list.length === list.rows.length) list.rows = withRoom(list.rows, list.length + 1);
  list.rows[list.length] = row;
  list.length += 1;
}

/** The array, or a longer copy of it: half as long again while it is short, an eighth once it is long. */
export function withRoom<T extends Uint8Array | Uint16Array | Uint32Array | Float64Array>(cells: T, least: number): T {
  if (cells.length >= least) return cells;
  const more = cells.length < 1 << 16 ? cells.length >> 1 : cells.length >> 3;
  const longer = new (cells.constructor as new (length: number) => T)(Math.max(least, cells.length + more, 4));
  longer.set(cells);
  return longer;
}

/** A list this many times as long as what is left is searched; a shorter one is read through. */
const SEARCH_FROM = 48;
/** Of a list this many times as long as what is left, so few rows are kept that they are told by a branch. */
const RARE = 8;

/**
 * Writes the rows that are in all lists into `scratch.rows`, ascending, and returns how many there are. The shortest list
 * leads; its rows are looked for first in the bits of dense lists, then in the others: these are searched where they are
 * much longer than what is left, else read through against bits of what is left.
 * @param rows every row of the lists is below this
 */
export function intersectLists(lists: readonly PostingList[], { scratch, rows }: { scratch: Scratch; rows: number }): number {
  const [shortest, ...others] = [...lists].sort((a, b) => a.length - b.length);
  if (shortest === undefined) return 0;
  let left = shortest.rows;
  let count = shortest.length;
  for (const other of others) {
    const bits = denseBits(other, rows);
    if (bits === null) continue;
    count = keepInBits(left, count, { bits, into: listRoom(scratch, count + 1) });
    left = scratch.rows;
  }
  for (const other of others) {
    if (count === 0 || other.length * DENSE_FROM >= rows) continue;
    if (other.length > count * SEARCH_FROM) count = keepBySearch(left, count, { other, into: listRoom(scratch, count) });
    else count = keepByReading(left, count, { other, scratch, rows });
    left = scratch.rows;
  }
  if (left !== scratch.rows) listRoom(scratch, count).set(left.subarray(0, count));
  return count;
}

/** Each row is written, and the place moves on only where its bit is set: there is no branch to be guessed wrong. */
function keepInBits(left: Uint32Array, count: number, { bits, into }: { bits: BitWords; into: Uint32Array }): number {
  let to = 0;
  for (let i = 0; i < count; i += 1) {
    const row = left[i] as number;
    into[to] = row;
    to += ((bits[row >>> 5] as number) >>> (row & 31)) & 1;
  }
  return to;
}

/** The same where next to no bit is set: a branch that is nearly always guessed right is quicker than writing every row. */
function keepFewInBits(left: Uint32Array, count: number, { bits, into }: { bits: BitWords; into: Uint32Array }): number {
  let to = 0;
  for (let i = 0; i < count; i += 1) {
    const row = left[i] as number;
    if ((((bits[row >>> 5] as number) >>> (row & 31)) & 1) !== 0) {
      into[to] = row;
      to += 1;
    }
  }
  return to;
}

/** The same the other way round: the list is read through against bits of what is left. */
function keepByReading(left: Uint32Array, count: number, { other, scratch, rows }: { other: PostingList; scratch: Scratch; rows: number }): number {
  const bits = bitRoom(scratch, rows);
  const into = spareRoom(scratch, Math.min(count, other.length) + 1);
  for (let i = 0; i < count; i += 1) setBit(bits, left[i] as number);
  const kept = count * RARE < other.length ? keepFewInBits(other.rows, other.length, { bits, into }) : keepInBits(other.rows, other.length, { bits, into });
  for (let i = 0; i < count; i += 1) bits[(left[i] as number) >>> 5] = 0;
  scratch.spare = scratch.rows;
  scratch.rows = into;
  return kept;
}

/** Doubling steps from where the last row was found, then halving (galloping search). */
function keepBySearch(left: Uint32Array, count: number, { other: { rows, length }, into }: { other: PostingList; into: Uint32Array }): number {
  let to = 0;
  let low = 0;
  for (let i = 0; i < count && low < length; i += 1) {
    const row = left[i] as number;
    let step = 1;
    let high = low;
    while (high < length && (rows[high] as number) < row) {
      low = high + 1;
      high += step;
      step *= 2;
    }
    high = Math.min(high, length);
    while (low < high) {
      const middle = (low + high) >>> 1;
      if ((rows[middle] as number) < row) low = middle + 1;
      else high = middle;
    }
    if (low < length && rows[low] === row) {
      into[to] = row;
      to += 1;
    }
  }
  return to;
}
