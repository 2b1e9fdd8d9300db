import { type BitWords, hasBit, setBit } from './bit-set';
import { denseBits, type PostingList } from './posting-list';
import type { ValueGain } from './rank-by-gain';
import type { RecordIndex } from './record-index';
import { laneRoom } from './scratch';

/** Gains are whole multiples of this, so that their sums are exact: the same in any order. */
export const GRAIN = 2 ** -40;

/** The rows that state a value, the most that this gains them, the same in whole numbers, and a bit for each row. */
export type GainLane = { list: PostingList; gain: number; most: number; bits: BitWords; isLent: boolean };

/**
 * Values that gain something: the first `asked` of them asked for, highest gain first, then others. Bounds are counted in whole numbers of
 * 32 bits, `scale` of them to a nat, gains rounded up; `total` is all gains together, and `met` is below the negative of every sum.
 */
export type LaneSet = { all: GainLane[]; asked: number; scale: number; total: number; met: number };

const MOST_TOTAL = 2 ** 29;
const FINEST = 2 ** 16;

/** The lanes of the gains; bits that an index does not keep are lent by its scratch room until `emptyLanes`. */
export function gainLanes(index: RecordIndex, gains: readonly ValueGain[], byFlat: Float64Array): LaneSet {
  const gainOf = ({ flat, asked }: ValueGain) => (asked ? Math.max(GRAIN, byFlat[flat] as number) : (byFlat[flat] as number));
  const asked = gains.filter((g) => g.asked).sort((a, b) => gainOf(b) - gainOf(a));
  const others = gains.filter((g) => !g.asked && gainOf(g) > 0);
  const chosen = [...asked, ...others];
  const sum = chosen.reduce((all, g) => all + gainOf(g), 0);
  const scale = Math.min(FINEST, 2 ** Math.floor(Math.log2((MOST_TOTAL - chosen.length) / Math.max(sum, GRAIN))));
  const all = chosen.map((g, place): GainLane => {
    const list = index.byValue[g.flat] as PostingList;
    const kept = denseBits(list, index.rows);
    const lane = { list, gain: gainOf(g), most: Math.ceil(gainOf(g) * scale), bits: kept ?? NONE, isLent: false };
    // The first list is often the only one that is walked, and then nobody asks who stands in it.
    if (kept === null && place > 0) lendBits(index, lane, place);
    return lane;
  });
  return { all, asked: asked.length, scale, total: all.reduce((total, { most }) => total + most, 0), met: -MOST_TOTAL - 1 };
}

const NONE: BitWords = new Uint32Array(0);

/** Lends a lane bits of its own. */
function lendBits({ scratch, rows: all }: RecordIndex, lane: GainLane, place: number): void {
  const { rows, length } = lane.list;
  const bits = laneRoom(scratch, place, all);
  lane.bits = bits;
  lane.isLent = true;
  for (let i = 0; i < length; i += 1) setBit(bits, rows[i] as number);
}

/** Lends the first lane its bits where it has none; before another one is walked. */
export function lendToFirst(index: RecordIndex, { all }: LaneSet): void {
  const first = all[0] as GainLane;
  if (first.bits === NONE) lendBits(index, first, 0);
}

/** Gives lent bits back, all 0. */
export function emptyLanes({ all }: LaneSet): void {
  for (const { isLent, bits, list } of all) {
    if (!isLent) continue;
    const { rows, length } = list;
    // Words one after another go by much faster than words here and there.
    if (length > bits.length / 8) bits.fill(0);
    else for (let i = 0; i < length; i += 1) bits[(rows[i] as number) >>> 5] = 0;
  }
}

/** The most that a row of a lane can have by its values, to the last bit; it stands in no lane before that one. */
export function exactBound({ all }: LaneSet, lane: number, row: number): number {
  let sum = (all[lane] as GainLane).gain;
  for (let i = lane + 1; i < all.length; i += 1) {
    const { bits, gain } = all[i] as GainLane;
    if (hasBit(bits, row)) sum += gain;
  }
  return sum;
}

/** The lowest sum in whole numbers that a row with this gain can have; 1 at least, since a lane gains that much. */
export function wholeGain({ scale }: LaneSet, gain: number): number {
  return Math.max(1, Math.floor(gain * scale));
}

/**
 * Adds the gain to the sums of the rows whose bit is set, and moves the rows whose sum is at least `least` to the front; returns how many
 * there are. Each row is written, and the place moves on only where it is kept: there is no branch to be guessed wrong.
 */
export function probe(
  { rows, sums }: { rows: Uint32Array; sums: Int32Array },
  count: number,
  { bits, gain, least }: { bits: BitWords; gain: number; least: number },
): number {
  let to = 0;
  for (let i = 0; i < count; i += 1) {
    const row = rows[i] as number;
    const bit = ((bits[row >>> 5] as number) >>> (row & 31)) & 1;
    const sum = ((sums[i] as number) + Math.imul(bit, gain)) | 0;
    rows[to] = row;
    sums[to] = sum;
    to += ~(sum - least) >>> 31;
  }
  return to;
}
