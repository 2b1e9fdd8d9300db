import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bumpCells, cellCount, createSparseRows, forEachCell, freeRow, readCells, type SparseRows, takeRow } from '../../shared/stats/sparse-rows';
import { FILLED } from '../../shared/stats/filling';
import { packRows, unpackRows } from '../../shared/stats/packed-rows';

/** Several groups of 256. */
const WIDTH = 9_001;

const change = fc.record({
  row: fc.nat({ max: 4 }),
  keys: fc.uniqueArray(fc.nat({ max: 60 }).map((n) => n * 9), { maxLength: 40 }).map((keys) => keys.sort((a, b) => a - b)),
  // Tenths of a record, other parts of one, and more than a narrow cell holds.
  by: fc.constantFrom(-600, -60, 60, 600, 50, -50, 3_000_000),
});

describe('sparse rows', () => {
  it('hold what plain maps hold, after any changes, and nothing that is zero', () => {
    fc.assert(
      fc.property(fc.array(change, { maxLength: 40 }), fc.nat({ max: 540 }), (changes, first) => {
        const store = createSparseRows(WIDTH);
        const rows = [0, 1, 2, 3, 4].map(() => takeRow(store));
        const plain = rows.map(() => new Map<number, number>());
        for (const { row, keys, by } of changes) {
          bumpCells(store, rows[row] as number, keys, by);
          for (const key of keys) plain[row]?.set(key, (plain[row]?.get(key) ?? 0) + by);
        }
        plain.forEach((map, row) => {
          const expected = [...map].filter(([, n]) => n !== 0).sort((a, b) => a[0] - b[0]);
          const cells: [number, number][] = [];
          forEachCell(store, rows[row] as number, (key, count) => cells.push([key, count]));
          expect(cells).toEqual(expected);
          expect(cellCount(store, rows[row] as number)).toBe(expected.length);
          const into = new Float64Array(10);
          readCells(store, rows[row] as number, { first, end: first + 10, into, sign: -1 });
          expect([...into]).toEqual(Array.from({ length: 10 }, (_, i) => 0 - (map.get(first + i) ?? 0)));
        });
      }),
      { numRuns: 200, seed: 4 },
    );
  });

  it('are the same packed and unpacked, and can change then', () => {
    fc.assert(
      fc.property(fc.array(change, { maxLength: 30 }), fc.array(change, { maxLength: 10 }), (before, after) => {
        const store = createSparseRows(WIDTH);
        const rows = [0, 1, 2, 3, 4].map(() => takeRow(store));
        for (const { row, keys, by } of before) bumpCells(store, row, keys, by);
        const again = createSparseRows(WIDTH);
        unpackRows(again, packRows(store, [...rows].reverse()), { bits: FILLED, narrow: FILLED, wide: FILLED });
        for (const { row, keys, by } of after) {
          bumpCells(store, row, keys, by);
          bumpCells(again, 4 - row, keys, by);
        }
        const cellsOf = (of: SparseRows, row: number) => {
          const cells: [number, number][] = [];
          forEachCell(of, row, (key, count) => cells.push([key, count]));
          return cells;
        };
        for (const row of rows) expect(cellsOf(again, 4 - row)).toEqual(cellsOf(store, row));
      }),
      { numRuns: 100, seed: 5 },
    );
  });

  it('use the number of a freed row again, empty', () => {
    const store = createSparseRows(WIDTH);
    const row = takeRow(store);
    bumpCells(store, row, [1, 2, 3], 600);
    freeRow(store, row);
    expect(takeRow(store)).toBe(row);
    expect(cellCount(store, row)).toBe(0);
  });

  it('keep more cells than one block has room for', () => {
    const store = createSparseRows(WIDTH);
    const rows = Array.from({ length: 40 }, () => takeRow(store));
    for (let key = 0; key < 3_000; key += 1) for (const row of rows) bumpCells(store, row, [key * 3], key + 1);
    const into = new Float64Array(4);
    readCells(store, rows[39] as number, { first: 8_994, end: 8_998, into, sign: 1 });
    expect([...into]).toEqual([2_999, 0, 0, 3_000]);
  });
});
