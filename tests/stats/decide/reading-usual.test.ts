import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { chipScore } from '../../../shared/stats/decide/chip-score';
import { numberUsual } from '../../../shared/stats/decide/number-usual';
import { stateUsual } from '../../../shared/stats/decide/state-usual';
import { toleranceFactor } from '../../../shared/stats/decide/tolerance-factor';
import { createRandom } from '../../../shared/stats/random';

// Exact sums and many random cases: some seconds alone, more on a busy machine.
vi.setConfig({ testTimeout: 120_000 });

describe('toleranceFactor', () => {
  it('gives the two-sided 95 % confidence factors of Berthouex & Brown, Statistics for Environmental Engineers, Table 21.1', () => {
    const table = [
      [4, 5.37, 6.34, 8.22],
      [5, 4.29, 5.08, 6.6],
      [6, 3.73, 4.42, 5.76],
      [7, 3.39, 4.02, 5.24],
      [8, 3.16, 3.75, 4.89],
      [9, 2.99, 3.55, 4.63],
      [10, 2.86, 3.39, 4.44],
      [12, 2.67, 3.17, 4.16],
      [15, 2.49, 2.96, 3.89],
      [20, 2.32, 2.76, 3.62],
      [25, 2.22, 2.64, 3.46],
      [30, 2.15, 2.55, 3.35],
      [40, 2.06, 2.45, 3.22],
      [60, 1.96, 2.34, 3.07],
    ] as const;
    for (const [size, ...factors] of table) {
      [0.9, 0.95, 0.99].forEach((coverage, column) => {
        // One unit in the last printed place.
        expect(Math.abs(toleranceFactor(size, coverage, 0.95) - factors[column]!), `n ${size}, p ${coverage}`).toBeLessThan(
          0.0101,
        );
      });
    }
  });

  it('falls toward the normal quantile as readings grow many (1.96 for 95 %)', () => {
    expect(toleranceFactor(5000, 0.95, 0.95)).toBeGreaterThan(1.96);
    expect(toleranceFactor(5000, 0.95, 0.95)).toBeLessThan(2.01);
  });

  it('refuses fewer than two readings and shares outside 0 to 1', () => {
    expect(() => toleranceFactor(1, 0.9, 0.9)).toThrow(/at least 2/);
    expect(() => toleranceFactor(5, 1, 0.9)).toThrow(RangeError);
  });
});

describe('numberUsual', () => {
  it('holds the stated share of working units as surely as it says, on 1,500 simulated boards', () => {
    const random = createRandom(17);
    const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    for (const size of [5, 12]) {
      let held = 0;
      for (let board = 0; board < 1500; board++) {
        const working = Float64Array.from({ length: size }, () => 5 + 0.1 * normal());
        const { low, high } = numberUsual({ working }, 5).usual!;
        const inside = phi((high - 5) / 0.1) - phi((low - 5) / 0.1);
        if (inside >= 0.95) held++;
      }
      // Chance takes about one point of 1,500 boards, setting slips aside next to nothing.
      expect(held / 1500).toBeGreaterThan(0.93);
      expect(held / 1500).toBeLessThan(0.97);
    }
  });

  it('is not thrown off by a lost decimal point', () => {
    const working = Float64Array.of(4.98, 5.01, 5.02, 4.99, 5, 501);
    const { usual } = numberUsual({ working, resolution: 0.01 }, 4.2);
    expect(usual).toMatchObject({ setAside: 1, readings: 5, within: false });
    expect(usual!.centre).toBeCloseTo(5.005, 12);
    expect(numberUsual({ working, resolution: 0.01 }, 5.01).usual!.within).toBe(true);
  });

  it('does not call the next step of the meter unusual where all readings are alike', () => {
    const working = Float64Array.of(5, 5, 5, 5, 5, 5);
    expect(numberUsual({ working, resolution: 0.1 }, 5.1).usual!.within).toBe(true);
    // Six readings: 4.42 x 0.1 / sqrt(12) for the spread of rounding, and half a step: 0.178.
    expect(numberUsual({ working, resolution: 0.1 }, 5.17).usual!.within).toBe(true);
    expect(numberUsual({ working, resolution: 0.1 }, 5.4).usual!.within).toBe(false);
  });

  it('says nothing from fewer than three readings, but still judges by published limits', () => {
    const limits = { low: 4.75, high: 5.25 };
    const working = Float64Array.of(5, 5.1);
    expect(numberUsual({ working, limits }, 4.6)).toEqual({ withinLimits: false, usual: null });
    expect(numberUsual({ working, limits }, 4.8)).toEqual({ withinLimits: true, usual: null });
    expect(numberUsual({ working }, 4.8)).toEqual({ withinLimits: null, usual: null });
    expect(numberUsual({ working, limits: { low: null, high: 0.8 } }, -1).withinLimits).toBe(true);
  });
});

describe('stateUsual', () => {
  const counts = (...values: number[]) => Float64Array.of(...values);
  const none = counts(0, 0, 0, 0);

  it('never calls one sample usual, whatever the faulty units showed', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 50 }), { minLength: 4, maxLength: 4 }), (faulty) => {
        expect(stateUsual({ working: counts(1, 0, 0, 0), faulty: Float64Array.from(faulty) }, 0).verdict).not.toBe('usual');
      }),
    );
  });

  it('calls a state usual that most of many working units show, and one unusual that none of them does', () => {
    const readings = { working: counts(0, 1, 19, 0), faulty: none };
    expect(stateUsual(readings, 2).verdict).toBe('usual');
    expect(stateUsual(readings, 0).verdict).toBe('unusual');
    expect(stateUsual({ working: counts(0, 1, 2, 0), faulty: none }, 0).verdict).toBe('unclear');
    expect(stateUsual({ working: counts(3, 5, 0, 0), faulty: none }, 0).verdict).toBe('unclear');
  });

  it('weighs nothing without readings of either kind (derivable: both chances are one in four)', () => {
    expect(stateUsual({ working: none, faulty: none }, 1)).toMatchObject({
      working: 0.25,
      faulty: 0.25,
      weight: 0,
      low: 0,
      high: 1,
      verdict: 'unclear',
    });
  });

  it('weighs by the ratio of the chances (derivable: q (10 + 1/4) / 21; (1 + q) / 11 against (9 + q) / 11)', () => {
    const found = stateUsual({ working: counts(1, 9, 0, 0), faulty: counts(9, 1, 0, 0) }, 0);
    const share = 10.25 / 21;
    expect(found.working).toBeCloseTo((1 + share) / 11, 12);
    expect(found.faulty).toBeCloseTo((9 + share) / 11, 12);
    expect(found.weight).toBeCloseTo(10 * Math.log10((9 + share) / (1 + share)), 12);
  });

  it('gives chances that sum to 1 over the states', () => {
    const list = fc
      .array(fc.integer({ min: 0, max: 30 }), { minLength: 4, maxLength: 4 })
      .map((values) => Float64Array.from(values));
    fc.assert(
      fc.property(list, list, (working, faulty) => {
        const all = [0, 1, 2, 3].map((state) => stateUsual({ working, faulty }, state));
        expect(all.reduce((sum, found) => sum + found.working, 0)).toBeCloseTo(1, 9);
        expect(all.reduce((sum, found) => sum + found.faulty, 0)).toBeCloseTo(1, 9);
      }),
    );
  });

  it('refuses counts over different states, and a state that is not there', () => {
    expect(() => stateUsual({ working: counts(1, 2), faulty: none }, 0)).toThrow(/same states/);
    expect(() => stateUsual({ working: none, faulty: none }, 4)).toThrow(/no state 4/);
  });
});

describe('chipScore', () => {
  it('counts one pin in full, and four alike as 1.6 of them (derivable: 4 / (1 + 3 x .5))', () => {
    expect(chipScore([6, 0, 0])).toEqual({ score: 6, drivers: [0] });
    expect(chipScore([6, 6, 6, 6]).score).toBeCloseTo(9.6, 12);
  });

  it('sums independent pins, and names the pins that drive it', () => {
    expect(chipScore([3, -4, 1], 0)).toEqual({ score: 0, drivers: [1, 0, 2] });
  });

  it('lies between nothing and the plain sum', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -30, max: 30, noNaN: true }), { maxLength: 40 }), (weights) => {
        const sum = weights.reduce((a, b) => a + b, 0);
        const { score } = chipScore(weights);
        expect(Math.abs(score)).toBeLessThanOrEqual(Math.abs(sum) + 1e-9);
        expect(score * sum).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('scores no pins 0 and refuses what is no number', () => {
    expect(chipScore([])).toEqual({ score: 0, drivers: [] });
    expect(() => chipScore([Number.NaN])).toThrow(/finite/);
  });
});

/** Standard normal distribution function by Zelen & Severo's formula (Abramowitz & Stegun 26.2.17, error below 7.5e-8). */
function phi(x: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(x));
  const tail =
    Math.exp((-x * x) / 2) *
    0.3989422804014327 *
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return x > 0 ? 1 - tail : tail;
}
