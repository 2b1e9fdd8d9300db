import { createRequire } from 'node:module';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type FixCounts, fixSuccess, rankFixSuccess } from '../../../shared/stats/decide/fix-success';

const counts = (cures: number, tries: number): FixCounts => ({
  tries,
  cures,
  partial: 0,
  noChange: tries - cures,
  madeWorse: 0,
  cameBack: 0,
});

describe('fixSuccess', () => {
  it('gives the Jeffreys interval of Boost.Histogram (test/utility_jeffreys_interval_test.cpp, one sigma)', () => {
    const confidence = 0.682689492137086;
    const middle = fixSuccess([counts(5, 10)], { confidence });
    expect(middle.low).toBeCloseTo(0.349406560319967, 12);
    expect(middle.high).toBeCloseTo(0.650593439680033, 12);
    const rare = fixSuccess([counts(1, 10)], { confidence });
    expect(rare.low).toBeCloseTo(0.041888372640752, 12);
    expect(rare.high).toBeCloseTo(0.233759443394751, 12);
  });

  it('gives the Jeffreys intervals of Brown, Cai & DasGupta 2001, Table A.1, away from the ends', () => {
    for (const [cures, low, high] of [
      [2, 0.065, 0.648],
      [3, 0.139, 0.765499],
      [4, 0.234501, 0.861],
    ] as const) {
      const found = fixSuccess([counts(cures, 7)], { confidence: 0.95 });
      expect(Math.abs(found.low - low)).toBeLessThan(0.00051);
      expect(Math.abs(found.high - high)).toBeLessThan(0.00051);
    }
  });

  it('agrees with a second library on the pooled interval of a single node', () => {
    const { jStat } = createRequire(import.meta.url)('jstat');
    const found = fixSuccess([counts(23, 60)], { confidence: 0.95 });
    expect(found.pooledLow).toBeCloseTo(jStat.beta.inv(0.025, 23.5, 37.5), 7);
    expect(found.pooledHigh).toBeCloseTo(jStat.beta.inv(0.975, 23.5, 37.5), 7);
  });

  it('knows nothing where nothing was tried: 0 to 1, never a share of zero', () => {
    const found = fixSuccess([counts(0, 0)]);
    expect([found.low, found.high, found.estimate]).toEqual([0, 1, 0.5]);
  });

  it('counts partial cures and made worse as tries without cure', () => {
    const found = fixSuccess([{ tries: 10, cures: 4, partial: 3, noChange: 2, madeWorse: 1, cameBack: 0 }]);
    expect(found.estimate).toBeCloseTo(4.5 / 11, 12);
  });

  it('borrows from the rest of the device path where the device has no tries (derivable: 36.5 of 41 elsewhere)', () => {
    const found = fixSuccess([counts(36, 40), counts(0, 0)], { borrowedTries: 4 });
    expect(found.estimate).toBeCloseTo(36.5 / 41, 12);
    expect([found.low, found.high]).toEqual([0, 1]);
    expect(found.pooledHigh - found.pooledLow).toBeGreaterThan(0.3);
  });

  it('never counts a unit twice: a device that has all the units of the path gets its own Jeffreys share back', () => {
    const found = fixSuccess([counts(3, 9), counts(3, 9), counts(3, 9)], { borrowedTries: 4 });
    expect(found.estimate).toBeCloseTo((3 + 0.5) / (9 + 1), 12);
  });

  it('lets a device with many tries speak for itself', () => {
    const found = fixSuccess([counts(910, 2000), counts(900, 1000)]);
    expect(found.estimate).toBeGreaterThan(0.89);
  });

  it('stays between the shares on the path, and inside its own interval', () => {
    const path = fc
      .array(fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 40 })), { minLength: 1, maxLength: 5 })
      .map((own) => own.map((_, depth) => own.slice(depth).reduce((sum, [c, f]) => [sum[0]! + c, sum[1]! + f], [0, 0])))
      .map((sums) => sums.map(([cures, failures]) => counts(cures!, cures! + failures!)));
    fc.assert(
      fc.property(path, (nodes) => {
        const found = fixSuccess(nodes);
        expect(found.pooledLow).toBeLessThan(found.estimate);
        expect(found.estimate).toBeLessThan(found.pooledHigh);
        expect(found.low).toBeLessThanOrEqual(found.high);
      }),
    );
  });

  it('refuses more cures than tries, negative counts and a device that counts more than the level above', () => {
    expect(() => fixSuccess([{ ...counts(3, 3), tries: 2 }])).toThrow(/more often \(3\)/);
    expect(() => fixSuccess([{ ...counts(1, 2), partial: -1 }])).toThrow(/negative/);
    expect(() => fixSuccess([counts(1, 2), counts(2, 3)])).toThrow(/level above/);
    expect(() => fixSuccess([])).toThrow(/at least one node/);
  });
});

describe('rankFixSuccess', () => {
  it('does not let 1 of 1 beat 40 of 50', () => {
    expect(rankFixSuccess([fixSuccess([counts(1, 1)]), fixSuccess([counts(40, 50)])])).toEqual([1, 0]);
  });

  it('puts the untried below the often tried and sometimes successful', () => {
    expect(rankFixSuccess([fixSuccess([counts(0, 0)]), fixSuccess([counts(10, 50)]), fixSuccess([counts(30, 50)])])).toEqual([
      2, 1, 0,
    ]);
  });
});
