import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestFirst, createBestRows, offerRow } from '../../shared/stats/best-rows';
import { devicePath } from '../../shared/stats/findings';
import type { CodedRecord } from '../../shared/stats/layout';
import { indexFromSections, indexSections } from '../../shared/stats/index-sections';
import { storedInMemory } from '../../shared/stats/sections';
import { appendRow, createPostingList, intersectLists } from '../../shared/stats/posting-list';
import { rankSimilar } from '../../shared/stats/rank-similar';
import { addToIndex, createRecordIndex, liveRows, type RecordIndex, readRow, retractFromIndex, statedValues } from '../../shared/stats/record-index';
import { rowOfKey } from '../../shared/stats/record-keys';
import { createScratch } from '../../shared/stats/scratch';
import { arbitraryRecord } from './arbitrary-record';
import { smallLayout } from './small-world';

const layout = smallLayout();
type Named = { record: CodedRecord; name: number };

const sequence = fc.array(fc.record({ record: arbitraryRecord, drop: fc.boolean(), pick: fc.nat() }), { maxLength: 60 });

/** Adds and retracts, and what is then in. */
function play(steps: { record: CodedRecord; drop: boolean; pick: number }[]): { index: RecordIndex; kept: (Named & { row: number })[] } {
  const index = createRecordIndex(layout);
  const kept: (Named & { row: number })[] = [];
  steps.forEach(({ record, drop, pick }, name) => {
    // Names in another order than that of the rows.
    const key = (name * 37) % 101;
    kept.push({ record, name: key, row: addToIndex(index, record, { key: [key, 0, 0] }) });
    if (drop) retractFromIndex(index, kept.splice(pick % kept.length, 1)[0]?.row as number);
  });
  return { index, kept };
}

const counted = ({ size, carrying, total, unresolved, proofs, attempts, attemptsByCause }: RecordIndex) => ({
  size,
  tallies: [carrying, total, unresolved, proofs, attempts, attemptsByCause].map((cells) => [...cells]),
});

describe('the record index', () => {
  it('counts after any sequence of adds and retracts what a rebuild counts, bit for bit', () => {
    fc.assert(
      fc.property(sequence, (steps) => {
        const { index, kept } = play(steps);
        const rebuilt = createRecordIndex(layout);
        for (const { record, name } of [...kept].reverse()) addToIndex(rebuilt, record, { key: [name, 0, 0] });
        expect(counted(index)).toEqual(counted(rebuilt));
        expect([...liveRows(index)]).toEqual(kept.map(({ row }) => row).sort((a, b) => a - b));
      }),
      { numRuns: 150, seed: 9 },
    );
  });

  it('gives back each record, and finds it by its key as long as it is in', () => {
    fc.assert(
      fc.property(sequence, (steps) => {
        const { index, kept } = play(steps);
        for (const { record, name, row } of kept) {
          expect(rowOfKey(index.keys, [name, 0, 0])).toBe(row);
          const read = readRow(index, row);
          expect(read).toMatchObject({ device: record.device, proof: record.proof, causes: record.causes });
          expect(read.findings.map(({ flat, step, proves }) => ({ flat, step, proves }))).toEqual(
            record.findings.map((f) => ({ flat: (layout.valueStarts[f.observable] as number) + f.value, step: f.step, proves: f.proves })),
          );
        }
        const names = new Set(kept.map(({ name }) => name));
        for (let name = 0; name < 101; name += 1) if (!names.has(name)) expect(rowOfKey(index.keys, [name, 0, 0])).toBe(-1);
      }),
      { numRuns: 100, seed: 10 },
    );
  });

  it('hands out sections that later changes leave as they were, and that make the same index', () => {
    fc.assert(
      fc.property(sequence, sequence, (before, after) => {
        const { index, kept } = play(before);
        const sections = indexSections(index);
        const copy = Object.fromEntries(Object.entries(sections).map(([name, cells]) => [name, [...cells]]));
        const again = indexFromSections(layout, storedInMemory(structuredClone(sections)));
        expect(counted(again)).toEqual(counted(index));
        for (const { row } of kept) expect(readRow(again, row)).toEqual(readRow(index, row));
        after.forEach(({ record }, i) => {
          addToIndex(index, record, { key: [1_000 + i, 0, 0] });
          addToIndex(again, record, { key: [1_000 + i, 0, 0] });
        });
        for (const { row } of kept) retractFromIndex(index, row);
        for (const { row } of kept) retractFromIndex(again, row);
        expect(counted(again)).toEqual(counted(index));
        expect(Object.fromEntries(Object.entries(sections).map(([name, cells]) => [name, [...cells]]))).toEqual(copy);
      }),
      { numRuns: 40, seed: 12 },
    );
  });

  it('keeps designators, months, outcomes and what came after the cure', () => {
    const index = createRecordIndex(layout);
    const row = addToIndex(
      index,
      { device: 4, causes: [2, 0], proof: 1, findings: [] },
      { month: 24_322, outcome: 3, complete: true, designators: [[70_000], []], late: [{ observable: 5, value: 0, step: 9 }] },
    );
    expect(readRow(index, row)).toEqual({
      device: 4,
      month: 24_322,
      proof: 1,
      outcome: 3,
      complete: true,
      causes: [2, 0],
      designators: [[70_000], []],
      findings: [{ flat: 11, step: 9, proves: false, late: true }],
    });
    expect([...statedValues(readRow(index, row))]).toEqual([]);
    expect(index.attempts[4 * 5]).toBe(1);
  });

  it('refuses to take out what is not in', () => {
    const index = createRecordIndex(layout);
    const row = addToIndex(index, { device: 4, causes: [], proof: -1, findings: [] });
    retractFromIndex(index, row);
    expect(() => retractFromIndex(index, row)).toThrow(RangeError);
    expect(() => retractFromIndex(index, 7)).toThrow(RangeError);
  });
});

describe('intersectLists', () => {
  it('gives what sets give, whether lists have bits, are walked through or searched', () => {
    const rows = fc.uniqueArray(fc.nat({ max: 3_000 }), { maxLength: 800 }).map((list) => list.sort((a, b) => a - b));
    const few = fc.uniqueArray(fc.nat({ max: 3_000 }), { maxLength: 60 }).map((list) => list.sort((a, b) => a - b));
    fc.assert(
      fc.property(rows, rows, few, fc.boolean(), fc.constantFrom(3_001, 100_000), (a, b, c, withFew, all) => {
        const chosen = withFew ? [a, b, [...new Set([...c, ...a.slice(0, 3)])].sort((x, y) => x - y)] : [a, b];
        const lists = chosen.map((list) => {
          const made = createPostingList();
          for (const row of list) appendRow(made, row);
          return made;
        });
        const scratch = createScratch();
        const count = intersectLists(lists, { scratch, rows: all });
        expect([...scratch.rows.subarray(0, count)]).toEqual(a.filter((row) => chosen.every((list) => list.includes(row))));
        expect(scratch.bits.every((word) => word === 0)).toBe(true);
      }),
      { numRuns: 200, seed: 3 },
    );
  });
});

describe('best rows', () => {
  it('are those that sorting everything puts first', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 9 }), { maxLength: 80 }), fc.integer({ min: 0, max: 12 }), (scores, limit) => {
        const best = createBestRows(limit);
        const order = (a: number, b: number) => b - a;
        scores.forEach((score, row) => offerRow(best, row, score, order));
        const sorted = scores.map((score, row) => ({ row, score })).sort((a, b) => b.score - a.score || b.row - a.row);
        expect(bestFirst(best, order)).toEqual(sorted.slice(0, limit));
      }),
      { numRuns: 300, seed: 5 },
    );
  });
});

describe('rankSimilar', () => {
  it('ranks as the definition does, whatever was retracted before; ties go to the lower key', () => {
    const question = fc.record({
      device: fc.constantFrom(null, 4, 3, 9),
      findings: fc.uniqueArray(fc.integer({ min: 0, max: 5 }), { minLength: 1, maxLength: 4 }).map((os) => os.map((observable) => ({ observable, value: 1 }))),
    });
    fc.assert(
      fc.property(sequence, question, (steps, { device, findings }) => {
        const { index, kept } = play(steps);
        const weights = Float64Array.from({ length: 16 }, (_, flat) => 1 + flat / 8);
        const path = devicePath(layout, device ?? 0).slice(1);
        const expected = kept
          .map(({ record, name, row }) => {
            const values = (o: number) => record.findings.filter((f) => f.observable === o).map((f) => f.value);
            const near = devicePath(layout, record.device).filter((node) => path.includes(node)).length;
            let score = 0.15 * near;
            let shares = false;
            for (const { observable, value } of findings) {
              const weight = weights[(layout.valueStarts[observable] as number) + value] as number;
              if (values(observable).includes(value)) {
                score += weight;
                shares = true;
              }
              score -= 0.7 * weight * new Set(values(observable).filter((v) => v !== value)).size;
            }
            return { row, name, score: Math.round(score * 1e9), shares };
          })
          .filter(({ shares }) => shares)
          .sort((a, b) => b.score - a.score || a.name - b.name)
          .slice(0, 5);
        const ranked = rankSimilar(index, { device, findings }, { limit: 5, weights });
        expect(ranked.map(({ row, score }) => [row, Math.round(score * 1e9)])).toEqual(expected.map(({ row, score }) => [row, score]));
      }),
      { numRuns: 200, seed: 6 },
    );
  });
});
