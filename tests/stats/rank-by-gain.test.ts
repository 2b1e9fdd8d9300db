import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { rankByGain, type ValueGain } from '../../shared/stats/rank-by-gain';
import { createRandom } from '../../shared/stats/random';
import { addToIndex, createRecordIndex, isLive, readRow, retractFromIndex, statedValues } from '../../shared/stats/record-index';
import { recorded, recordOf, smallLayout } from './small-world';

const layout = smallLayout();
const VALUES = layout.valueStarts[layout.valueCounts.length] as number;
/** So many that a list takes several blocks. */
const ROWS = 20_000;

const index = createRecordIndex(layout);
const statedOf: Uint16Array[] = [];

beforeAll(() => {
  const random = createRandom(4);
  const below = (n: number) => Math.floor(random() * n);
  for (let i = 0; i < ROWS; i += 1) {
    // Some say the same twice, some two values of one observable.
    const findings = Array.from({ length: below(6) }, () => {
      const observable = below(layout.valueCounts.length);
      return recorded(observable, below(layout.valueCounts[observable] as number));
    });
    // Keys in another order than that of the rows.
    addToIndex(index, recordOf(4 + below(3), [below(4)], findings), { key: [(i * 7919) % ROWS, 0, i] });
  }
  for (let i = 0; i < 900; i += 1) {
    const row = below(ROWS);
    if (isLive(index, row)) retractFromIndex(index, row);
  }
  for (let row = 0; row < ROWS; row += 1) statedOf.push(isLive(index, row) ? statedValues(readRow(index, row)) : new Uint16Array(0));
});

/** Scores every record by itself: the definition. */
function exhaustive(gains: readonly ValueGain[], term: (row: number) => number, limit: number) {
  const by = new Map(gains.map((g) => [g.flat, g]));
  return statedOf
    .flatMap((stated, row) => {
      if (!stated.some((flat) => by.get(flat)?.asked)) return [];
      return [{ row, score: stated.reduce((sum, flat) => sum + (by.get(flat)?.gain ?? 0), 0) + term(row) }];
    })
    .sort((a, b) => b.score - a.score || (index.keys.high[a.row] as number) - (index.keys.high[b.row] as number) || a.row - b.row)
    .slice(0, limit);
}

describe('rankByGain', () => {
  it('gives exactly what scoring every record gives, ties by the key', () => {
    // Quarters, so that many records tie and sums are exact; gains of other values may be above 0, gains asked for below.
    const gain = fc.record({ flat: fc.nat({ max: VALUES - 1 }), gain: fc.integer({ min: -6, max: 12 }).map((n) => n / 4), asked: fc.boolean() });
    const gains = fc.uniqueArray(gain, { maxLength: 9, selector: (g) => g.flat });
    fc.assert(
      fc.property(gains, fc.integer({ min: 0, max: 25 }), fc.integer({ min: 0, max: 8 }), (chosen, limit, spread) => {
        const of = (row: number) => ((row * 31) % (spread + 1)) / 4;
        const ranked = rankByGain(index, chosen, { limit, term: { of, most: spread / 4 } });
        expect(ranked).toEqual(exhaustive(chosen, of, limit));
      }),
      { numRuns: 120, seed: 21 },
    );
  }, 30_000);

  it('does so with gains that are no round numbers, close ties among them, and finds all where fewer are asked for than there are', () => {
    const gain = fc.record({ flat: fc.nat({ max: VALUES - 1 }), gain: fc.double({ min: -3, max: 9, noNaN: true }), asked: fc.constant(true) });
    const grain = 2 ** -40;
    fc.assert(
      fc.property(fc.uniqueArray(gain, { minLength: 1, maxLength: 6, selector: (g) => g.flat }), fc.constantFrom(1, 20, ROWS), fc.boolean(), (drawn, limit, isScaled) => {
        // As the ranking rounds them, so that sums are exact; and a thousandfold, which its whole numbers hold, too.
        const chosen = drawn.map((g) => ({ ...g, gain: Math.round((g.gain * (isScaled ? 1000 : 1)) / grain) * grain }));
        const none = { of: () => 0, most: 0 };
        expect(rankByGain(index, chosen, { limit, term: none })).toEqual(exhaustive(chosen, none.of, limit));
      }),
      { numRuns: 30, seed: 22 },
    );
  }, 30_000);

  it('ranks nothing for values that no record states, and leaves nothing behind for the next question', () => {
    const empty = createRecordIndex(layout);
    const chosen = [{ flat: 1, gain: 2, asked: true }, { flat: 3, gain: 1, asked: true }];
    const none = { of: () => 0, most: 0 };
    expect(rankByGain(empty, chosen, { limit: 20, term: none })).toEqual([]);
    // A list of few rows has no bits of its own: they are lent, given back, and lent to another list.
    for (let row = 0; row < 300; row += 1) addToIndex(empty, recordOf(4, [0], row === 70 ? [recorded(0, 1)] : row === 90 ? [recorded(1, 1)] : []));
    expect(rankByGain(empty, chosen, { limit: 20, term: none })).toEqual([{ row: 70, score: 2 }, { row: 90, score: 1 }]);
    expect(rankByGain(empty, [chosen[1] as ValueGain, { flat: 0, gain: 1, asked: true }], { limit: 20, term: none })).toEqual([{ row: 90, score: 1 }]);
    expect(empty.scratch.lanes.every((bits) => bits.every((word) => word === 0))).toBe(true);
  });

  it('does not depend on the order in which gains are given, to the last bit', () => {
    const chosen = Array.from({ length: 8 }, (_, flat) => ({ flat, gain: Math.log(2 + flat / 7), asked: true }));
    const options = { limit: 20, term: { of: (row: number) => Math.sqrt(row % 5) / 10, most: 0.2 } };
    expect(rankByGain(index, [...chosen].reverse(), options)).toEqual(rankByGain(index, chosen, options));
  });
});
