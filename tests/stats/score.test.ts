import { describe, expect, it } from 'vitest';
import { logSumExp, mixIn, normaliseLogScores, scoreFindings } from '../../shared/stats/score';

/** Posterior of given tables through the production kernel: exponents 1, nothing mixed in. */
function posterior(prior: number[], likelihoods: number[][]): number[] {
  const logPrior = Float64Array.from(prior, Math.log);
  const findings = likelihoods.map((row) => ({ logLikelihood: Float64Array.from(row, Math.log), weight: 1 }));
  return [...normaliseLogScores(scoreFindings({ logPrior, findings }))];
}

describe('scoreFindings', () => {
  // Ferritin and iron-deficiency anaemia, 2x2 table 731/270, 78/1500 (Centre for Evidence-Based Medicine, Toronto,
  // worksheets on diagnosis; exact fractions, as the printed LR of 0.12 comes from rounded percentages).
  it('gives the post-test probabilities of the ferritin example', () => {
    const positive = [731 / 809, 270 / 1770];
    const negative = [78 / 809, 1500 / 1770];
    const prevalence = 809 / 2579;
    expect(posterior([prevalence, 1 - prevalence], [positive])[0]).toBeCloseTo(0.73027, 6);
    expect(posterior([0.5, 0.5], [positive])[0]).toBeCloseTo(0.855564, 6);
    expect(posterior([0.02, 0.98], [positive])[0]).toBeCloseTo(0.10785, 5);
    expect(posterior([prevalence, 1 - prevalence], [negative])[0]).toBeCloseTo(0.04943, 6);
  });

  // Guyatt et al., Am J Med 88 (1990), 205-209: ferritin in the elderly, pre-test 30 % and 70 %.
  it('gives the multi-level ferritin post-test probabilities', () => {
    expect(posterior([0.3, 0.7], [[70 / 85, 15 / 150]])[0]).toBeCloseTo(0.7792, 4);
    expect(posterior([0.7, 0.3], [[70 / 85, 15 / 150]])[0]).toBeCloseTo(0.9505, 4);
    expect(posterior([0.3, 0.7], [[8 / 85, 108 / 150]])[0]).toBeCloseTo(0.0531, 4);
    expect(posterior([0.7, 0.3], [[8 / 85, 108 / 150]])[0]).toBeCloseTo(0.2337, 4);
  });

  // E. T. Jaynes, Probability Theory: The Logic of Science (2003), ch. 4: a bad machine (1/3 defective, prior 1/11), a
  // good one (1/6), something else (99/100, prior 1e-6); m defectives in a row.
  it('lets the improbable third hypothesis of Jaynes win', () => {
    const prior = [(1 - 1e-6) / 11, (10 * (1 - 1e-6)) / 11, 1e-6];
    const defective = [1 / 3, 1 / 6, 99 / 100];
    const expected: [number, number, number, number][] = [
      [1, 0.166666, 0.833329, 0.000005],
      [5, 0.760432, 0.237635, 0.001933],
      [10, 0.626097, 0.006114, 0.367789],
      [15, 0.007313, 0.000002, 0.992685],
      [20, 0.000032, 0, 0.999968],
    ];
    for (const [m, ...shares] of expected) {
      const p = posterior(prior, new Array<number[]>(m).fill(defective));
      shares.forEach((share, i) => {
        expect(p[i]).toBeCloseTo(share, 5);
      });
    }
  });

  // T. Mitchell, Machine Learning (1997), ch. 6.9, the query (sunny, cool, high, strong).
  it('gives the naive Bayes answer of the tennis example', () => {
    const [no, yes] = posterior([5 / 14, 9 / 14], [
      [3 / 5, 2 / 9],
      [1 / 5, 3 / 9],
      [4 / 5, 3 / 9],
      [3 / 5, 3 / 9],
    ]);
    expect(no).toBeCloseTo(0.795417349, 9);
    expect(yes).toBeCloseTo(1 - 0.795417349, 9);
  });

  it('neither overflows nor loses the sum with 10,000 causes and 200 findings', () => {
    const logPrior = new Float64Array(10_000).fill(-Math.log(10_000));
    const findings = Array.from({ length: 200 }, (_, i) => ({
      logLikelihood: Float64Array.from({ length: 10_000 }, (_, c) => -40 - ((c * (i + 7)) % 13)),
      weight: 1,
    }));
    const p = normaliseLogScores(scoreFindings({ logPrior, findings }));
    expect(p.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 10);
    expect(p.every((x) => Number.isFinite(x))).toBe(true);
  });

  it('keeps impossible causes impossible', () => {
    const p = posterior([0, 0.5, 0.5], [[1, 0.5, 0.25]]);
    expect(p[0]).toBe(0);
    expect(p[1]).toBeCloseTo(2 / 3, 12);
  });
});

describe('normaliseLogScores', () => {
  it('refuses scores under which nothing is possible', () => {
    expect(() => normaliseLogScores(Float64Array.of(-Infinity, -Infinity))).toThrow(RangeError);
  });
});

describe('logSumExp', () => {
  it('adds far below what exp can hold', () => {
    expect(logSumExp([-2000, -2000])).toBeCloseTo(-2000 + Math.LN2, 12);
    expect(logSumExp([])).toBe(-Infinity);
  });
});

describe('mixIn', () => {
  it('moves a share of the way to the prior', () => {
    expect([...mixIn(Float64Array.of(1, 0), Float64Array.of(0.5, 0.5), 0.002)]).toEqual([0.999, 0.001]);
  });
});
