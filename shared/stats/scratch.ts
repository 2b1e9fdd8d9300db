import type { BitWords } from './bit-set';

/**
 * Room to work in, so that a question allocates nothing per record. `rows`, `spare` and `block` may hold anything; `bits` and each of
 * `lanes` (one bit per row) are all 0 between questions.
 */
export type Scratch = { rows: Uint32Array; spare: Uint32Array; bits: BitWords; lanes: BitWords[]; block: { rows: Uint32Array; sums: Int32Array; order: Uint16Array } };

/** Rows that are looked at together: they and their sums stay in the nearest cache. */
export const BLOCK = 2048;

/** Room that grows when it is first needed. */
export function createScratch(): Scratch {
  return { rows: new Uint32Array(0), spare: new Uint32Array(0), bits: new Uint32Array(0), lanes: [], block: blockOf(0) };
}

/** Makes room for so many rows in a list. */
export function listRoom(scratch: Scratch, rows: number): Uint32Array {
  if (scratch.rows.length < rows) scratch.rows = new Uint32Array(rows + (rows >> 2) + 64);
  return scratch.rows;
}

/** Makes room for so many rows in a second list. */
export function spareRoom(scratch: Scratch, rows: number): Uint32Array {
  if (scratch.spare.length < rows) scratch.spare = new Uint32Array(rows + (rows >> 2) + 64);
  return scratch.spare;
}

/** Makes room for a bit per row. */
export function bitRoom(scratch: Scratch, rows: number): BitWords {
  const words = (rows + 31) >>> 5;
  if (scratch.bits.length < words) scratch.bits = new Uint32Array(words + (words >> 3) + 16);
  return scratch.bits;
}

/** A bit per row, apart for each place. */
export function laneRoom({ lanes }: Scratch, place: number, rows: number): BitWords {
  const words = (rows + 31) >>> 5;
  while (lanes.length <= place) lanes.push(new Uint32Array(0));
  if ((lanes[place] as BitWords).length < words) lanes[place] = new Uint32Array(words + (words >> 3) + 16);
  return lanes[place] as BitWords;
}

const blockOf = (length: number) => ({ rows: new Uint32Array(length), sums: new Int32Array(length), order: new Uint16Array(length) });

/** Room for a block of rows, their sums, and the order in which they are taken. */
export function blockRoom(scratch: Scratch): Scratch['block'] {
  if (scratch.block.rows.length === 0) scratch.block = blockOf(BLOCK);
  return scratch.block;
}
