import { bestFirst, type BestRows, createBestRows, offerRow } from './best-rows';
import { emptyLanes, exactBound, type GainLane, GRAIN, gainLanes, type LaneSet, lendToFirst, probe, wholeGain } from './gain-lanes';
import { isLive, type RecordIndex } from './record-index';
import { compareKeys } from './record-keys';
import { rowGain } from './record-words';
import { BLOCK, blockRoom } from './scratch';

/** What a record adds by itself, and the most that any record adds. */
export type RowTerm = { of: (row: number) => number; most: number };

/** What stating a flat value gains, each value once; only rows that state a value `asked` for are ranked. */
export type ValueGain = { flat: number; gain: number; asked: boolean };

export type ScoredRow = { row: number; score: number };

/** Sums are told apart by so many bits where the high ones are taken first. */
const LEVEL_BITS = 6;

const exact = (gain: number) => Math.round(gain / GRAIN) * GRAIN;

/**
 * The rows of the highest sums of gains and term, best first, ties to the lower key: the same rows as scoring every row. The
 * lists of what is asked for are walked from the highest gain on; the other lists are only probed, bit by bit, for an upper
 * bound of each row's score, and a row is scored from its own words where the bound reaches the worst of the best so far.
 * What is left of the lists once all of them together cannot lift a row so far, mostly the longest, is never
 * walked (H. Turtle & J. Flood, Information Processing & Management 31 (1995), 831-850).
 */
export function rankByGain(index: RecordIndex, gains: readonly ValueGain[], { limit, term }: { limit: number; term: RowTerm }): ScoredRow[] {
  if (limit === 0) return [];
  const byFlat = new Float64Array(index.observables.length);
  for (const { flat, gain } of gains) byFlat[flat] = exact(gain);
  const lanes = gainLanes(index, gains, byFlat);
  const best = createBestRows(limit);
  // Made once: this many rows are looked at that making a function for each shows.
  const order = (a: number, b: number) => compareKeys(index.keys, a, b);
  const search: Search = { index, best, order, term: { of: (row) => exact(term.of(row)), most: exact(term.most) }, byFlat, lanes, least: 1 };
  try {
    let reach = lanes.total;
    for (let i = 0; i < lanes.asked && reach >= search.least; i += 1) {
      if (i === 1) lendToFirst(index, lanes);
      walkLane(search, i);
      reach -= (lanes.all[i] as GainLane).most;
    }
  } finally {
    emptyLanes(lanes);
  }
  return bestFirst(best, order);
}

type Search = {
  index: RecordIndex;
  best: BestRows;
  order: (a: number, b: number) => number;
  term: RowTerm;
  byFlat: Float64Array;
  lanes: LaneSet;
  /** A row whose bound is less is not among the best, whatever its term; in the lanes' whole numbers. */
  least: number;
};

/** Looks at every row of a lane that stands in none of the lanes before it, a block at a time, in it those of high bounds first. */
function walkLane(search: Search, lane: number): void {
  const { list, most } = search.lanes.all[lane] as GainLane;
  const block = blockRoom(search.index.scratch);
  const { rows, sums, order } = block;
  for (let from = 0; from < list.length; from += BLOCK) {
    const count = Math.min(BLOCK, list.length - from);
    rows.set(list.rows.subarray(from, from + count));
    sums.fill(most, 0, count);
    const left = boundRows(search, { lane, block, count });
    putHighFirst(block, left, search.lanes.total);
    for (let i = 0; i < left; i += 1) {
      const k = order[i] as number;
      if ((sums[k] as number) >= search.least) offer(search, lane, rows[k] as number);
    }
  }
}

type Block = ReturnType<typeof blockRoom>;

/** Adds to the block's sums what the other lanes give, and keeps the rows that may reach the least; returns how many there are. */
function boundRows({ lanes, least }: Search, { lane, block, count }: { lane: number; block: Block; count: number }): number {
  let left = count;
  let rest = lanes.total;
  for (let j = 0; j <= lane; j += 1) rest -= (lanes.all[j] as GainLane).most;
  for (let j = 0; j < lane; j += 1) left = probe(block, left, { bits: (lanes.all[j] as GainLane).bits, gain: lanes.met, least: least - rest });
  for (let j = lane + 1; j < lanes.all.length && left > 0; j += 1) {
    const { bits, most } = lanes.all[j] as GainLane;
    rest -= most;
    left = probe(block, left, { bits, gain: most, least: least - rest });
  }
  return left;
}

/** Fills `order` with the places of the block's rows, those of high sums first; sums that are nearly the same stand as they come. */
function putHighFirst({ sums, order }: Block, count: number, total: number): void {
  const shift = Math.max(0, 32 - LEVEL_BITS - Math.clz32(total));
  const last = (1 << LEVEL_BITS) - 1;
  const starts = new Uint16Array(last + 2);
  for (let i = 0; i < count; i += 1) {
    const after = last + 1 - ((sums[i] as number) >>> shift);
    starts[after] = (starts[after] as number) + 1;
  }
  for (let i = 1; i <= last; i += 1) starts[i] = (starts[i] as number) + (starts[i - 1] as number);
  for (let i = 0; i < count; i += 1) {
    const at = last - ((sums[i] as number) >>> shift);
    order[starts[at] as number] = i;
    starts[at] = (starts[at] as number) + 1;
  }
}

/** Takes a row in where it is among the best. What is far away in memory is looked at last, and only where it can still matter. */
function offer(search: Search, lane: number, row: number): void {
  const { index, best, term, lanes, order } = search;
  if (best.size === best.rows.length) {
    const worst = best.scores[0] as number;
    const bound = exactBound(lanes, lane, row);
    if (bound + term.most < worst) return;
    const most = term.most === 0 ? bound : bound + term.of(row);
    if (most < worst || (most === worst && order(row, best.rows[0] as number) > 0)) return;
  }
  if (!isLive(index, row)) return;
  offerRow(best, row, rowGain(index, row, search.byFlat) + term.of(row), order);
  if (best.size === best.rows.length) search.least = wholeGain(lanes, (best.scores[0] as number) - term.most);
}
