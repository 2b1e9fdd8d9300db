import { bestFirst, type BestRows, createBestRows, offerRow } from './best-rows';
import type { PostingList } from './posting-list';
import { isLive, type RecordIndex } from './record-index';
import { compareKeys } from './record-keys';
import { rowGain } from './record-words';
import { WINDOW_BITS, windowRoom } from './scratch';

/** What a record adds by itself, and the most that any record adds. */
export type RowTerm = { of: (row: number) => number; most: number };

/** What stating a flat value gains, each value once; only rows that state a value `asked` for are ranked. */
export type ValueGain = { flat: number; gain: number; asked: boolean };

export type ScoredRow = { row: number; score: number };

/** Gains are whole multiples of this, so that their sums are exact: the same in any order, and never above what bounds them. */
const GRAIN = 2 ** -40;

const exact = (gain: number) => Math.round(gain / GRAIN) * GRAIN;

type Lane = { list: PostingList; gain: number; at: number };

/**
 * The rows of the highest sums of gains and term, best first, ties to the lower key: the same rows as scoring every row. Rows are
 * taken window by window: the gains of lists are added up into a bound of each row's score, and only rows whose bound
 * reaches the worst of the best so far are scored in full from their own words. Lists that cannot lift a row so far by
 * themselves are not walked for candidates (H. Turtle & J. Flood, Information Processing & Management 31 (1995), 831-850).
 */
export function rankByGain(index: RecordIndex, gains: readonly ValueGain[], { limit, term }: { limit: number; term: RowTerm }): ScoredRow[] {
  const byFlat = new Float64Array(index.observables.length);
  for (const { flat, gain } of gains) byFlat[flat] = exact(gain);
  const best = createBestRows(limit);
  if (limit === 0) return [];
  const search: Search = { index, best, term: { of: (row) => exact(term.of(row)), most: exact(term.most) }, byFlat, least: GRAIN };
  const { stated, others } = lanesOf(index, gains, byFlat);
  for (let start = 0; start < index.rows; start += 1 << WINDOW_BITS) scanWindow(search, { stated, others, start });
  return bestFirst(best, (a, b) => compareKeys(index.keys, a, b));
}

type Search = {
  index: RecordIndex;
  best: BestRows;
  term: RowTerm;
  byFlat: Float64Array;
  /** A row whose gains sum to less is not among the best, whatever its term. */
  least: number;
};

/** Lists of values asked for, highest gain first, and of other values that gain something. */
function lanesOf({ byValue }: RecordIndex, gains: readonly ValueGain[], byFlat: Float64Array): { stated: Lane[]; others: Lane[] } {
  const lane = ({ flat }: ValueGain): Lane => ({ list: byValue[flat] as PostingList, gain: Math.max(GRAIN, byFlat[flat] as number), at: 0 });
  const stated = gains.filter((g) => g.asked).map(lane);
  const others = gains.filter((g) => !g.asked && (byFlat[g.flat] as number) > 0).map(lane);
  return { stated: stated.sort((a, b) => b.gain - a.gain), others };
}

/** How many of the first lanes a row must be in one of: what all others give together does not reach `least`. */
function essentialLanes(stated: readonly Lane[], others: readonly Lane[], least: number): number {
  let rest = others.reduce((sum, { gain }) => sum + gain, 0);
  let essential = stated.length;
  while (essential > 0 && rest + (stated[essential - 1] as Lane).gain < least) {
    essential -= 1;
    rest += (stated[essential] as Lane).gain;
  }
  return essential;
}

function scanWindow(search: Search, { stated, others, start }: { stated: Lane[]; others: Lane[]; start: number }): void {
  const sums = windowRoom(search.index.scratch);
  const essential = essentialLanes(stated, others, search.least);
  const end = start + sums.length;
  const from = stated.slice(0, essential).map(({ at }) => at);
  stated.forEach((lane, i) => {
    lane.at = i < essential ? addAll(sums, lane, end) : addWhereMet(sums, lane, end);
  });
  for (const lane of others) lane.at = addWhereMet(sums, lane, end);
  for (let i = 0; i < essential; i += 1) takeCandidates(search, { sums, lane: stated[i] as Lane, from: from[i] as number });
}

function addAll(sums: Float64Array, { list: { rows, length }, gain, at }: Lane, end: number): number {
  const mask = sums.length - 1;
  let i = at;
  for (; i < length; i += 1) {
    const row = rows[i] as number;
    if (row >= end) break;
    sums[row & mask] = (sums[row & mask] as number) + gain;
  }
  return i;
}

function addWhereMet(sums: Float64Array, { list: { rows, length }, gain, at }: Lane, end: number): number {
  const mask = sums.length - 1;
  let i = at;
  for (; i < length; i += 1) {
    const row = rows[i] as number;
    if (row >= end) break;
    const sum = sums[row & mask] as number;
    sums[row & mask] = sum > 0 ? sum + gain : 0;
  }
  return i;
}

/** Visits each row of the lane's part once, whatever lanes it is in, and leaves its sum at 0. */
function takeCandidates(search: Search, { sums, lane, from }: { sums: Float64Array; lane: Lane; from: number }): void {
  const { rows } = lane.list;
  const mask = sums.length - 1;
  let { least } = search;
  for (let i = from; i < lane.at; i += 1) {
    const row = rows[i] as number;
    const bound = sums[row & mask] as number;
    sums[row & mask] = 0;
    if (bound >= least) {
      offer(search, row, bound);
      least = search.least;
    }
  }
}

function offer(search: Search, row: number, bound: number): void {
  const { index, best, term } = search;
  if (!isLive(index, row)) return;
  const order = (a: number, b: number) => compareKeys(index.keys, a, b);
  const own = term.of(row);
  if (best.size === best.rows.length) {
    const worst = best.scores[0] as number;
    // The record's words are far away: they are looked at only where it can still be among the best.
    if (bound + own < worst || (bound + own === worst && order(row, best.rows[0] as number) > 0)) return;
  }
  offerRow(best, row, rowGain(index, row, search.byFlat) + own, order);
  if (best.size === best.rows.length) search.least = Math.max(GRAIN, (best.scores[0] as number) - term.most);
}
