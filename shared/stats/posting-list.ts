/** Rows in ascending order; `length` of them are in use. */
export type PostingList = { rows: Uint32Array; length: number };

const NONE = new Uint32Array(0);

/** A list of no rows. */
export function createPostingList(): PostingList {
  return { rows: NONE, length: 0 };
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

/** From here on the longer list is searched instead of walked through. */
const SEARCH_FROM = 12;

/**
 * Writes the rows that are in all lists into `into`, ascending, and returns how many there are. The shortest list leads;
 * much longer ones are searched, others walked through. `into` must have room for the shortest list.
 */
export function intersectLists(lists: readonly PostingList[], into: Uint32Array): number {
  const byLength = [...lists].sort((a, b) => a.length - b.length);
  const shortest = byLength[0];
  if (shortest === undefined) return 0;
  into.set(shortest.rows.subarray(0, shortest.length));
  let count = shortest.length;
  for (let i = 1; i < byLength.length && count > 0; i += 1) {
    const other = byLength[i] as PostingList;
    count = other.length > count * SEARCH_FROM ? keepBySearch(into, count, other) : keepByWalk(into, count, other);
  }
  return count;
}

function keepByWalk(kept: Uint32Array, count: number, { rows, length }: PostingList): number {
  let to = 0;
  let at = 0;
  for (let i = 0; i < count; i += 1) {
    const row = kept[i] as number;
    while (at < length && (rows[at] as number) < row) at += 1;
    if (at === length) break;
    if (rows[at] === row) {
      kept[to] = row;
      to += 1;
    }
  }
  return to;
}

/** Doubling steps from where the last row was found, then halving (galloping search). */
function keepBySearch(kept: Uint32Array, count: number, { rows, length }: PostingList): number {
  let to = 0;
  let low = 0;
  for (let i = 0; i < count && low < length; i += 1) {
    const row = kept[i] as number;
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
      kept[to] = row;
      to += 1;
    }
  }
  return to;
}
