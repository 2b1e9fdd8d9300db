import { describe, expect, it } from 'vitest';
import { simpleGoodTuring } from '../../shared/stats/good-turing';

// Gale & Sampson, Journal of Quantitative Linguistics 2 (1995), 217-237: the prosody table; results recomputed.
const R = [
  1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 15, 16, 17, 19, 20, 21, 23, 24, 25, 26, 27, 28, 31, 32, 33, 34, 36, 41, 43, 45, 46,
  47, 50, 71, 84, 101, 105, 121, 124, 146, 162, 193, 199, 224, 226, 254, 257, 339, 421, 456, 481, 483, 1140, 1256, 1322,
  1530, 2131, 2395, 6925, 7846,
];
const N = [
  120, 40, 24, 13, 15, 5, 11, 2, 2, 1, 3, 2, 1, 1, 3, 1, 3, 2, 3, 3, 3, 2, 2, 1, 2, 2, 1, 2, 2, 3, 1, 3, 1, 1, 1, 1, 1, 1,
  1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1,
];
const prosody = R.map((r, i) => ({ r, n: N[i] as number }));

describe('simpleGoodTuring', () => {
  it('gives the published figures of the prosody table', () => {
    const { unseen, slope, intercept, probability } = simpleGoodTuring(prosody);
    expect(unseen).toBeCloseTo(0.0038832438, 10);
    expect(slope).toBeCloseTo(-1.389374, 6);
    expect(intercept).toBeCloseTo(4.468558, 6);
    expect(probability(1)).toBeCloseTo(2.468474e-5, 11);
    expect(probability(2)).toBeCloseTo(5.522127e-5, 11);
    expect(probability(12)).toBeCloseTo(3.760863e-4, 10);
    expect(probability(7846)).toBeCloseTo(0.2536696, 7);
    expect(probability(1) * 30902).toBeCloseTo(0.762808, 5);
  });

  it('shares out the whole probability', () => {
    const { unseen, probability } = simpleGoodTuring(prosody);
    expect(prosody.reduce((sum, { r, n }) => sum + n * probability(r), unseen)).toBeCloseTo(1, 12);
  });

  // The truncated table as another library's test has it (SMILE, GoodTuring): N = 586.
  it('gives the figures of the truncated table', () => {
    const { unseen, probability } = simpleGoodTuring(prosody.slice(0, 11));
    expect(unseen).toBeCloseTo(0.2047782, 7);
    [0.0009267, 0.0024393, 0.0040945, 0.0058063, 0.0075464, 0.0093026, 0.0110689, 0.0128418, 0.0146194, 0.0164005, 0.0199696].forEach((p, i) => {
      expect(probability(R[i] as number)).toBeCloseTo(p, 7);
    });
  });

  it('refuses a single frequency', () => {
    expect(() => simpleGoodTuring([{ r: 1, n: 3 }])).toThrow(RangeError);
  });
});
