import { describe, expect, it } from 'vitest';
import { bm25, inverseDocumentFrequency } from '../../shared/stats/bm25';
import { averagePrecision, discountedGain, normalisedDiscountedGain, reciprocalRank } from '../../shared/stats/ranking-measures';

// Jarvelin & Kekalainen, "Cumulated gain-based evaluation of IR techniques", ACM TOIS 20 (2002) 422-446: the list G and
// the ideal vector I; here with the modern discount log2(rank + 1), for which the values were computed by hand anew.
const G = [3, 2, 3, 0, 0, 1, 2, 2, 3, 0];

describe('discountedGain and normalisedDiscountedGain', () => {
  it('gives the values of the ten-document list', () => {
    expect(discountedGain(G, 10)).toBeCloseTo(8.318753, 6);
    expect(normalisedDiscountedGain(G, G, 10)).toBeCloseTo(0.916809, 6);
  });

  it('gives the values of the six-document example, also with two documents not found', () => {
    const six = [3, 2, 3, 0, 1, 2];
    expect(discountedGain(six, 6)).toBeCloseTo(6.861127, 6);
    expect(normalisedDiscountedGain(six, six, 6)).toBeCloseTo(0.960808, 6);
    expect(normalisedDiscountedGain(six, [...six, 3, 2], 6)).toBeCloseTo(0.785002, 6);
  });

  it('is not defined where nothing is relevant, and 1 for the ideal order', () => {
    expect(normalisedDiscountedGain([0, 0], [0, 0], 10)).toBeNull();
    expect(normalisedDiscountedGain([3, 2], [2, 3, 0], 10)).toBe(1);
  });
});

describe('averagePrecision', () => {
  it('gives the worked example of Croft, Metzler & Strohman, chapter 8', () => {
    const first = averagePrecision([1, 3, 6, 9, 10], 5) as number;
    const second = averagePrecision([2, 5, 7], 3) as number;
    expect(first).toBeCloseTo(0.622222, 6);
    expect(second).toBeCloseTo(0.442857, 6);
    expect((first + second) / 2).toBeCloseTo(0.53254, 6);
  });

  it('counts what was not found as nothing', () => {
    expect(averagePrecision([1], 2)).toBe(0.5);
    expect(averagePrecision([], 0)).toBeNull();
  });
});

describe('reciprocalRank', () => {
  it('is one over the rank of the first relevant result', () => {
    expect(reciprocalRank([false, false, true, true])).toBeCloseTo(1 / 3, 12);
    expect(reciprocalRank([false])).toBe(0);
  });
});

describe('bm25', () => {
  // Values of a real SQLite 3.40.1 FTS5 on six short texts, mean length 26/6 words.
  const meanLength = 26 / 6;
  const one = (having: number, length: number, count = 1) => bm25(count, inverseDocumentFrequency(6, having), { length, meanLength });

  it('equals what FTS5 computes', () => {
    expect(one(3, 4)).toBeCloseTo(1.032491e-6, 11);
    expect(one(3, 5)).toBeCloseTo(9.40789e-7, 11);
    expect(one(2, 4) + one(3, 4)).toBeCloseTo(0.606885459069, 12);
    expect(one(2, 5)).toBeCloseTo(0.552983507112, 12);
    expect(one(3, 4, 2)).toBeCloseTo(1.405405e-6, 11);
  });
});
