import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aodeScores } from '../../shared/stats/aode';
import { singleShares } from '../../shared/stats/dependence-shares';
import { flatLayout } from '../../shared/stats/encode-table';
import { aodeLeaveOneOut, fitAode } from '../../shared/stats/fit-aode';
import { fitTan } from '../../shared/stats/fit-tan';
import type { CodedRecord } from '../../shared/stats/layout';
import { createPairCounts } from '../../shared/stats/pair-counts';
import { createPlainEstimator } from '../../shared/stats/plain-naive-bayes';
import { countAll } from '../../shared/stats/count-all';
import { normaliseLogScores } from '../../shared/stats/score';
import { tanScores } from '../../shared/stats/tan';
import { conditionalInformation, tanTree } from '../../shared/stats/tan-tree';

/** A row of a table: its cause, then a value per observable, null where missing. */
function row(cause: number, ...values: (number | null)[]): CodedRecord {
  const findings = values.flatMap((value, observable) =>
    value === null ? [] : [{ observable, value, implied: false, step: 0, stage: 0, proves: false }],
  );
  return { device: 0, causes: [cause], proof: 0, findings };
}

const binary = (observables: number) => flatLayout(2, new Uint16Array(observables).fill(2));
const shrinkage = { single: 1, pair: 2 };

/** The cause is 1 where the first two observables differ: each by itself says nothing. */
const exclusive = Array.from({ length: 80 }, (_, i) => row((i & 1) ^ ((i >> 1) & 1), i & 1, (i >> 1) & 1, (i >> 2) & 1));

const rows = fc.array(
  fc
    .tuple(fc.nat(2), fc.array(fc.option(fc.nat(2)), { minLength: 4, maxLength: 4 }))
    .map(([cause, values]) => row(cause, ...values)),
  { minLength: 2, maxLength: 25 },
);
const ternary = flatLayout(3, new Uint16Array(4).fill(3));

describe('aodeScores', () => {
  // Worked by hand with the formula of Webb, Boughton & Wang, Machine Learning 58 (2005), 5-24, shares pulled as stated in
  // dependence-shares.ts. Rows (cause; A, B): (0; 0, 0), (0; 0, 1), (1; 1, 1). Asked: A = 0, B = 1.
  // P(c) = (2+1)/5, (1+1)/5. P(A=0) = (2+.5)/(3+1) = .625; P(B=1) = .625.
  // P(A=0|c): (2+.625)/3 = .875, .625/2 = .3125. P(B=1|c): (1+.625)/3 = .5416..., (1+.625)/2 = .8125.
  // P(B=1|c,A=0): (1+2(.5416...))/(2+2) = .52083..., .8125 (nothing seen). P(A=0|c,B=1): (1+2(.875))/(1+2) = .916666..., (0+2(.3125))/(1+2) = .208333...
  it('gives the value worked by hand on three rows', () => {
    const counts = createPairCounts(binary(2), [row(0, 0, 0), row(0, 0, 1), row(1, 1, 1)]);
    const scores = aodeScores(counts, row(0, 0, 1).findings, shrinkage);
    const first = (0.6 * 0.875 * (25 / 48) + 0.6 * (13 / 24) * (11 / 12)) / 2;
    const second = (0.4 * 0.3125 * 0.8125 + 0.4 * 0.8125 * (5 / 24)) / 2;
    expect(Math.exp(scores[0] as number)).toBeCloseTo(first, 12);
    expect(Math.exp(scores[1] as number)).toBeCloseTo(second, 12);
  });

  it('is naive Bayes where there is one finding, and the prior where there is none', () => {
    const counts = createPairCounts(ternary, [row(0, 1, 2, 0, 0), row(1, 0, 2, 1, 1), row(1, 1, 1, null, 2)]);
    const finding = { observable: 1, value: 2 };
    const prior = aodeScores(counts, [], shrinkage);
    [2, 3, 1].forEach((n, c) => expect(Math.exp(prior[c] as number)).toBeCloseTo(n / 6, 12));
    const share = singleShares(counts, { observable: 1, flat: 5 }, shrinkage);
    aodeScores(counts, [finding], shrinkage).forEach((score, c) => {
      expect(score).toBeCloseTo((prior[c] as number) + Math.log(share[c] as number), 12);
    });
  });

  it('ignores the order of findings and a finding told twice', () => {
    fc.assert(
      fc.property(rows, ([...records]) => {
        const counts = createPairCounts(ternary, records);
        const { findings } = records[0] as CodedRecord;
        const straight = aodeScores(counts, findings, shrinkage);
        const other = aodeScores(counts, [...findings].reverse().concat(findings), shrinkage);
        straight.forEach((score, c) => expect(other[c]).toBeCloseTo(score, 9));
      }),
      { numRuns: 60 },
    );
  });

  it('does not underflow with 300 findings', () => {
    const wide = flatLayout(2, new Uint16Array(300).fill(2));
    const ones = Array.from({ length: 300 }, () => 1);
    const counts = createPairCounts(wide, [row(0, ...ones), row(1, ...ones.map(() => 0))]);
    const probability = normaliseLogScores(aodeScores(counts, row(0, ...ones).findings, { single: 1e-4, pair: 1e-4 }));
    expect(probability[0]).toBeGreaterThan(0.999);
  });
});

describe('aodeLeaveOneOut', () => {
  it('scores each record as counts built without it would, and leaves the counts as they were', () => {
    fc.assert(
      fc.property(rows, (records) => {
        const counts = createPairCounts(ternary, records);
        aodeLeaveOneOut(counts, records, shrinkage).forEach((scores, i) => {
          const others = createPairCounts(
            ternary,
            records.filter((_, j) => j !== i),
          );
          const oracle = aodeScores(others, (records[i] as CodedRecord).findings, shrinkage);
          scores.forEach((score, c) => expect(Math.abs(score - (oracle[c] as number))).toBeLessThan(1e-9));
        });
        expect(counts).toEqual(createPairCounts(ternary, records));
      }),
      { numRuns: 60 },
    );
  });
});

describe('fitAode and fitTan', () => {
  it('learn that the cause is whether two findings differ, of which naive Bayes sees nothing', () => {
    const layout = binary(3);
    const asked = row(1, 0, 1, 1).findings;
    expect(createPlainEstimator(layout, countAll(layout, exclusive)).probabilities(0, asked)[1]).toBeCloseTo(0.5, 9);
    expect(fitAode(layout, exclusive).predict(asked)[1]).toBeGreaterThan(0.8);
    expect(fitTan(layout, exclusive).predict(asked)[1]).toBeGreaterThan(0.95);
  });

  it('give probabilities that sum to 1, whatever is missing', () => {
    const layout = binary(3);
    for (const member of [fitAode(layout, exclusive), fitTan(layout, exclusive)]) {
      for (const { findings } of [row(0), row(0, 1), row(0, null, 1, 0), row(0, 1, 1, 1)]) {
        expect(member.predict(findings).reduce((sum, p) => sum + p, 0)).toBeCloseTo(1, 12);
      }
    }
  });
});

describe('tanTree', () => {
  // Friedman, Geiger & Goldszmidt, Machine Learning 29 (1997), 131-163: I(A; B | C) is the log of 2 per record where B
  // is the exclusive or of A and the cause, and the third observable is independent of both.
  it('ties the two observables that depend on each other given the cause', () => {
    const counts = createPairCounts(binary(3), exclusive);
    expect(conditionalInformation(counts, 0, 1)).toBeCloseTo(80 * Math.LN2, 9);
    expect(conditionalInformation(counts, 0, 2)).toBeCloseTo(0, 9);
    expect(tanTree(counts)[1]).toBe(0);
  });
});

describe('tanScores', () => {
  it('falls back to the share without a parent where the parent is missing', () => {
    const counts = createPairCounts(binary(3), exclusive);
    const parents = Int32Array.of(-1, 0, 0);
    const score = tanScores(counts, [{ observable: 1, value: 1 }], { parents, shrinkage });
    const share = singleShares(counts, { observable: 1, flat: 3 }, shrinkage);
    score.forEach((s, c) => expect(s).toBeCloseTo(Math.log(0.5 * (share[c] as number)), 12));
  });
});
