// @ts-expect-error jstat ships no types
import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { dirichletMarginalInterval } from '../../shared/stats/dirichlet-marginal-interval';
import { jeffreysInterval, modifiedJeffreysInterval } from '../../shared/stats/jeffreys-interval';
import { wilsonInterval, wilsonScoreInterval } from '../../shared/stats/wilson-interval';

// Newcombe, Statistics in Medicine 17 (1998), 857-872, Table I (method 3), with more digits recomputed in R and SciPy.
const NEWCOMBE: [number, number, [number, number], [number, number]][] = [
  [81, 263, [0.2552885199, 0.3662095770], [0.2545219350, 0.3656474992]],
  [15, 148, [0.0623863995, 0.1604872417], [0.0604485170, 0.1576431435]],
  [0, 20, [0, 0.1611251581], [0, 0.1166389829]],
  [1, 29, [0.0061132143, 0.1717552188], [0.0037461736, 0.1500776860]],
];

describe('wilsonInterval', () => {
  it.each(NEWCOMBE)('equals Newcombe for %i of %i', (x, n, [low, high]) => {
    const interval = wilsonInterval(x, n, 0.95);
    expect(interval.low).toBeCloseTo(low, 9);
    expect(interval.high).toBeCloseTo(high, 9);
  });

  // NIST/SEMATECH e-Handbook of Statistical Methods, section 7.2.4.1: 26 of 200, z = 1.645, lower limit 0.09577.
  it('equals the NIST one-sided limit', () => {
    expect(wilsonScoreInterval(26, 200, 1.645).low).toBeCloseTo(0.095770122, 9);
  });

  it('says nothing without trials and refuses impossible counts', () => {
    expect(wilsonInterval(0, 0)).toEqual({ low: 0, high: 1 });
    expect(() => wilsonInterval(3, 2)).toThrow(RangeError);
  });
});

describe('jeffreysInterval', () => {
  it.each(NEWCOMBE)('equals the Beta quantiles for %i of %i (R and SciPy)', (x, n, _, [low, high]) => {
    const interval = jeffreysInterval(x, n, 0.95);
    expect(interval.low).toBeCloseTo(low, 9);
    expect(interval.high).toBeCloseTo(high, 9);
  });

  // boostorg/histogram, test of utility_jeffreys_interval: one sigma, (successes, failures).
  it.each([
    [5, 10, 0.349406560319967, 0.650593439680033],
    [1, 10, 0.041888372640752, 0.233759443394751],
  ])('equals the one-sigma values for %i of %i', (x, n, low, high) => {
    const interval = jeffreysInterval(x, n, 0.6826894921370859);
    expect(interval.low).toBeCloseTo(low, 12);
    expect(interval.high).toBeCloseTo(high, 12);
  });

  it('agrees with a second library for counts as they occur in repairs', () => {
    for (const [x, n] of [[1, 2], [3, 4], [9, 10], [23, 60], [1, 400], [399, 400]] as const) {
      const interval = jeffreysInterval(x, n);
      expect(interval.low).toBeCloseTo(jstat.beta.inv(0.05, x + 0.5, n - x + 0.5), 7);
      expect(interval.high).toBeCloseTo(jstat.beta.inv(0.95, x + 0.5, n - x + 0.5), 7);
    }
  });
});

// Brown, Cai & DasGupta, Statistical Science 16 (2001), 101-133, Table A.1 (modified Jeffreys, 95 %).
describe('modifiedJeffreysInterval', () => {
  it.each([
    [0, 1, 0, 0.975],
    [0, 7, 0, 0.41],
    [1, 7, 0, 0.501],
    [2, 7, 0.065, 0.648],
    [3, 7, 0.139, 0.766],
    [4, 7, 0.234, 0.861],
  ])('equals the table for %i of %i to a unit in the last place', (x, n, low, high) => {
    const interval = modifiedJeffreysInterval(x, n, 0.95);
    expect(Math.abs(interval.low - low)).toBeLessThan(0.001);
    expect(Math.abs(interval.high - high)).toBeLessThan(0.001);
  });
});

describe('dirichletMarginalInterval', () => {
  it("is Jeffreys' interval where there are two categories", () => {
    expect(dirichletMarginalInterval(3, 7, 2, 0.95)).toEqual(jeffreysInterval(3, 7, 0.95));
  });

  it('is the Beta marginal of the Dirichlet (second library)', () => {
    const { low, high } = dirichletMarginalInterval(4, 10, 5);
    expect(low).toBeCloseTo(jstat.beta.inv(0.05, 4.5, 8), 7);
    expect(high).toBeCloseTo(jstat.beta.inv(0.95, 4.5, 8), 7);
  });
});
