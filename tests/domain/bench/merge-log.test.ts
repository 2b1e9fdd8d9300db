import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isNewer, mergeRecords, nextClock } from '../../../shared/domain/bench/merge-log';

type Rec = { id: string; clock: number; by: string; text: string };
/** What a record says follows from its revision: one writer never gives two texts to one clock. */
const rec = fc
  .record({ id: fc.constantFrom('a', 'b', 'c', 'd'), clock: fc.integer({ min: 1, max: 5 }), by: fc.constantFrom('x', 'y', 'z') })
  .map((r): Rec => ({ ...r, text: `${r.id} ${r.clock} ${r.by}` }));
const log = fc.array(rec, { maxLength: 12 });

describe('mergeRecords', () => {
  it('is the same in whatever order and however often sides are merged', () => {
    fc.assert(
      fc.property(log, log, log, (a, b, c) => {
        expect(mergeRecords(a, b)).toEqual(mergeRecords(b, a));
        expect(mergeRecords(mergeRecords(a, b), c)).toEqual(mergeRecords(a, mergeRecords(b, c)));
        expect(mergeRecords(mergeRecords(a, b), b)).toEqual(mergeRecords(a, b));
      }),
      { seed: 5 },
    );
  });

  it('keeps what either side added, each in its newest revision', () => {
    fc.assert(
      fc.property(log, log, (a, b) => {
        const merged = mergeRecords(a, b);
        expect(new Set(merged.map((r) => r.id))).toEqual(new Set([...a, ...b].map((r) => r.id)));
        for (const kept of merged) for (const r of [...a, ...b]) if (r.id === kept.id) expect(isNewer(r, kept)).toBe(false);
      }),
      { seed: 6 },
    );
  });
});

describe('nextClock', () => {
  // Lamport 1978: a later event carries a greater clock than everything its writer has seen.
  it('is past every revision seen', () => {
    expect(nextClock([])).toBe(1);
    expect(nextClock([{ id: 'a', clock: 7, by: 'x' }, { id: 'b', clock: 3, by: 'y' }])).toBe(8);
  });
});
