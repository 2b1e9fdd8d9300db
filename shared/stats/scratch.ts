import type { BitWords } from './bit-set';

/**
 * Room to work in, so that a question allocates nothing per record. `rows` and `spare` may hold anything; `bits` (one per row) and `sums`
 * (one per row of a window) are all 0 between questions.
 */
export type Scratch = { rows: Uint32Array; spare: Uint32Array; bits: BitWords; sums: Float64Array };

/** Rows that are looked at together: their sums stay in the nearest cache. */
export const WINDOW_BITS = 13;
const WINDOW = 1 << WINDOW_BITS;

/** Room that grows when it is first needed. */
export function createScratch(): Scratch {
  return { rows: new Uint32Array(0), spare: new Uint32Array(0), bits: new Uint32Array(0), sums: new Float64Array(0) };
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

/** Room for the sums of one window. */
export function windowRoom(scratch: Scratch): Float64Array {
  if (scratch.sums.length === 0) scratch.sums = new Float64Array(WINDOW);
  return scratch.sums;
}
