import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { expectedBits, posteriorAfter, predictive } from '../../../shared/stats/decide/check-model';
import { type CheckCandidate, nextChecks, SET_UP_SHARE } from '../../../shared/stats/decide/next-check';
import { chainCheck, expectedChecks } from './half-split-chain';

// Exact sums and many random cases: some seconds alone, more on a busy machine.
vi.setConfig({ testTimeout: 120_000 });

const plain: Omit<CheckCandidate, 'table' | 'values'> = {
  weight: 1,
  minutes: 1,
  stage: 1,
  prerequisitesMet: true,
  possible: true,
  instrumentsHeld: true,
  risk: 0,
  safetyFirst: false,
  alreadySetUp: false,
};

/** Two listed causes and an unlisted one; the check tells cause 0 from the others with this certainty. */
function telling(sharpness: number, rest: Partial<CheckCandidate> = {}): CheckCandidate {
  const yes = 0.5 + sharpness / 2;
  return { ...plain, table: Float64Array.of(yes, 1 - yes, 1 - yes, yes, 0.5, 0.5), values: 2, ...rest };
}

const even = Float64Array.of(0.45, 0.45, 0.1);

const beliefs = (causes: number) =>
  fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: causes, maxLength: causes }).map((raw) => {
    const sum = raw.reduce((a, b) => a + b, 0);
    return Float64Array.from(raw, (x) => (sum > 0 ? x / sum : 1 / causes));
  });

const anyCheck = fc
  .record({ causes: fc.integer({ min: 2, max: 6 }), values: fc.integer({ min: 2, max: 4 }) })
  .chain(({ causes, values }) =>
    fc.record({
      posterior: beliefs(causes),
      rows: fc.array(beliefs(values), { minLength: causes, maxLength: causes }),
      weight: fc.double({ min: 0, max: 2, noNaN: true }),
      values: fc.constant(values),
    }),
  )
  .map(({ posterior, rows, weight, values }) => ({
    posterior,
    check: { table: Float64Array.from(rows.flatMap((row) => [...row])), values, weight },
  }));

describe('expectedBits', () => {
  it('reproduces the information gains of the tennis table (Quinlan 1986, Machine Learning 1; Mitchell 1997, ch. 3)', () => {
    const posterior = Float64Array.of(9 / 14, 5 / 14);
    const bits = (yes: number[], no: number[]) =>
      expectedBits(posterior, {
        table: Float64Array.of(...yes.map((count) => count / 9), ...no.map((count) => count / 5)),
        values: yes.length,
        weight: 1,
      });
    expect(bits([2, 4, 3], [3, 0, 2])).toBeCloseTo(0.2467498198, 9);
    expect(bits([3, 6], [4, 1])).toBeCloseTo(0.1518355014, 9);
    expect(bits([6, 3], [2, 3])).toBeCloseTo(0.0481270304, 9);
    expect(bits([2, 4, 3], [2, 2, 1])).toBeCloseTo(0.0292225657, 9);
  });

  it('is never negative, and never above the entropy of the beliefs at weight 1', () => {
    fc.assert(
      fc.property(anyCheck, ({ posterior, check }) => {
        expect(expectedBits(posterior, check)).toBeGreaterThanOrEqual(0);
        const entropy = -[...posterior].reduce((sum, p) => sum + (p > 0 ? p * Math.log2(p) : 0), 0);
        expect(expectedBits(posterior, { ...check, weight: 1 })).toBeLessThanOrEqual(entropy + 1e-9);
      }),
    );
  });

  it('equals entropy of the outcome less its mean entropy given the cause at weight 1', () => {
    const entropy = (values: number[]) => -values.reduce((sum, p) => sum + (p > 0 ? p * Math.log2(p) : 0), 0);
    fc.assert(
      fc.property(anyCheck, ({ posterior, check }) => {
        const outcome = entropy([...predictive(posterior, check)]);
        const given = [...posterior].reduce(
          (sum, p, cause) => sum + p * entropy([...check.table.slice(cause * check.values, (cause + 1) * check.values)]),
          0,
        );
        expect(expectedBits(posterior, { ...check, weight: 1 })).toBeCloseTo(outcome - given, 9);
      }),
    );
  });

  it('stays finite where a cause is believed next to nothing', () => {
    const posterior = Float64Array.of(1, 4e-310);
    expect(expectedBits(posterior, { table: Float64Array.of(1, 0, 0, 1), values: 2, weight: 1 })).toBeLessThan(1e-300);
  });

  it('is zero at weight 0, whatever the table says', () => {
    expect(expectedBits(even, { ...telling(1), weight: 0 })).toBe(0);
  });
});

describe('posteriorAfter', () => {
  it('sums to 1, and averages to the beliefs before at weight 1', () => {
    fc.assert(
      fc.property(anyCheck, ({ posterior, check }) => {
        const exact = { ...check, weight: 1 };
        const chance = predictive(posterior, exact);
        const mean = new Float64Array(posterior.length);
        for (let value = 0; value < exact.values; value++) {
          const after = posteriorAfter(posterior, exact, value);
          expect(after.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
          after.forEach((p, cause) => {
            mean[cause]! += chance[value]! * p;
          });
        }
        mean.forEach((p, cause) => expect(p).toBeCloseTo(posterior[cause]!, 9));
      }),
    );
  });

  it('keeps the beliefs where an outcome fits no cause at all', () => {
    const check = { table: Float64Array.of(1, 0, 1, 0), values: 2, weight: 1 };
    expect([...posteriorAfter(Float64Array.of(0.3, 0.7), check, 1)]).toEqual([0.3, 0.7]);
  });
});

describe('nextChecks', () => {
  it('needs the checks of the half-split table (US Army course IT0338; expected floor(log2 n) + 2 - 2^(floor(log2 n)+1)/n, worst ceil(log2 n))', () => {
    const table = [
      [2, 1, 1],
      [3, 5 / 3, 2],
      [5, 2.4, 3],
      [8, 3, 3],
      [10, 3.4, 4],
      [12, 11 / 3, 4],
      [20, 4.4, 5],
      [64, 6, 6],
    ] as const;
    for (const [stages, expected, worst] of table) {
      const found = expectedChecks(new Float64Array(stages).fill(1 / stages));
      expect(found.expected).toBeCloseTo(expected, 9);
      expect(found.worst).toBe(worst);
    }
  });

  it('takes 2.7 checks on an unequal chain whose optimum is 2.6, one step ahead not being enough (derivable: .5/.5, then 1 or 2.4)', () => {
    expect(expectedChecks(Float64Array.of(0.4, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1)).expected).toBeCloseTo(2.7, 9);
  });

  it('puts safe power-up first while nothing was powered, even where it tells nothing, and never after', () => {
    const candidates = [telling(1), telling(0, { safetyFirst: true, stage: 2, minutes: 9 })];
    const before = nextChecks({ posterior: even, candidates, poweredDone: false });
    expect(before.offered.map((check) => check.candidate)).toEqual([1, 0]);
    expect(before.offered[0]!.reasons).toContain('safe-power-up');
    const after = nextChecks({ posterior: even, candidates, poweredDone: true });
    expect(after.offered.map((check) => check.candidate)).toEqual([0]);
    expect(after.leftOut).toEqual([{ candidate: 1, reason: 'tells-nothing' }]);
  });

  it('puts the less invasive stage first, and inside it the most bits per minute', () => {
    const candidates = [
      telling(0.9, { stage: 2 }),
      telling(0.5, { stage: 1, minutes: 5 }),
      telling(0.5, { stage: 1, minutes: 2 }),
      telling(1, { stage: 3 }),
    ];
    const { offered } = nextChecks({ posterior: even, candidates, poweredDone: true });
    expect(offered.map((check) => check.candidate)).toEqual([2, 1, 0, 3]);
    expect(offered.map((check) => check.reasons[0])).toEqual([
      'least-invasive',
      'least-invasive',
      'more-invasive',
      'needs-solder',
    ]);
  });

  it('passes over a stage that brings little for the time, but never in favour of solder', () => {
    const candidates = [telling(0.15, { stage: 0, minutes: 30 }), telling(1, { stage: 2 }), telling(1, { stage: 3 })];
    const { offered } = nextChecks({ posterior: even, candidates, poweredDone: true });
    expect(offered.map((check) => check.candidate)).toEqual([1, 0, 2]);
    expect(offered[1]!.reasons).toEqual(['little-for-the-time']);
    const strict = nextChecks({ posterior: even, candidates, poweredDone: true, stageShare: 0 });
    expect(strict.offered.map((check) => check.candidate)).toEqual([0, 1, 2]);
  });

  it('never lets solder stand above a useful check without it, keeps stages together, and accounts for every candidate', () => {
    const candidate = fc
      .record({
        sharpness: fc.double({ min: 0, max: 1, noNaN: true }),
        stage: fc.integer({ min: 0, max: 4 }),
        minutes: fc.double({ min: 0.5, max: 60, noNaN: true }),
        possible: fc.boolean(),
        alreadySetUp: fc.boolean(),
      })
      .map(({ sharpness, ...rest }) => telling(sharpness, rest));
    fc.assert(
      fc.property(fc.array(candidate, { maxLength: 12 }), (candidates) => {
        const { offered, leftOut } = nextChecks({ posterior: even, candidates, poweredDone: true });
        const stages = offered.map((check) => candidates[check.candidate]!.stage);
        const firstSolder = stages.findIndex((stage) => stage >= 3);
        if (firstSolder >= 0) expect(Math.min(...stages.slice(firstSolder))).toBeGreaterThanOrEqual(3);
        const runs = stages.filter((stage, place) => stage !== stages[place - 1]);
        expect(new Set(runs).size).toBe(runs.length);
        for (const check of offered) expect(check.bits).toBeGreaterThanOrEqual(0.01);
        expect(offered.length + leftOut.length).toBe(candidates.length);
      }),
    );
  });

  it('leaves out what cannot be done, and says why', () => {
    const candidates = [
      telling(1, { possible: false }),
      telling(1, { instrumentsHeld: false }),
      telling(1, { prerequisitesMet: false }),
    ];
    const result = nextChecks({ posterior: even, candidates, poweredDone: true });
    expect(result.leftOut.map(({ reason }) => reason)).toEqual(['not-possible', 'no-instrument', 'prerequisite-open']);
    expect(result.stop).toBe('none-possible');
  });

  it('stops when a listed cause is proved enough, but not when the unlisted one is', () => {
    const proved = nextChecks({ posterior: Float64Array.of(0.96, 0.02, 0.02), candidates: [telling(1)], poweredDone: true });
    expect(proved).toMatchObject({ offered: [], stop: 'cause-proved', provedCause: 0 });
    const unlisted = nextChecks({ posterior: Float64Array.of(0.02, 0.02, 0.96), candidates: [telling(1)], poweredDone: true });
    expect(unlisted.stop).not.toBe('cause-proved');
  });

  it('stops when no check pays', () => {
    const result = nextChecks({ posterior: even, candidates: [telling(0.01)], poweredDone: true });
    expect(result).toMatchObject({ offered: [], stop: 'no-check-pays', leftOut: [{ candidate: 0, reason: 'tells-nothing' }] });
  });

  it('counts only what is left of the minutes where the check is set up already', () => {
    const candidates = [telling(0.5, { minutes: 5 }), telling(0.5, { minutes: 6, alreadySetUp: true })];
    const { offered } = nextChecks({ posterior: even, candidates, poweredDone: true });
    expect(offered.map((check) => check.candidate)).toEqual([1, 0]);
    expect(offered[0]!.minutes).toBeCloseTo(6 * (1 - SET_UP_SHARE), 12);
    expect(offered[0]!.reasons).toContain('already-set-up');
  });

  it('says what each outcome would do to the leading causes (derivable: .9 x .45 of .9 x .45 + .1 x .45 + .5 x .1)', () => {
    const { offered } = nextChecks({ posterior: even, candidates: [telling(0.8)], poweredDone: true, topCauses: 1 });
    const [first, second] = offered[0]!.outcomes;
    expect(first!.probability).toBeCloseTo(0.5, 12);
    expect(first!.effect).toEqual([{ cause: 0, before: 0.45, after: expect.closeTo(0.81, 12) }]);
    expect(second!.effect.map(({ cause }) => cause)).toEqual([0, 1]);
  });

  it('refuses a table of the wrong shape and a check that takes no time', () => {
    const wrong = { ...telling(1), table: new Float64Array(5) };
    expect(() => nextChecks({ posterior: even, candidates: [wrong], poweredDone: true })).toThrow(/6 table cells, not 5/);
    expect(() => nextChecks({ posterior: even, candidates: [telling(1, { minutes: 0 })], poweredDone: true })).toThrow(
      /some time/,
    );
  });
});

describe('chainCheck', () => {
  it('splits the chain before the boundary from the rest', () => {
    expect([...chainCheck(3, 1).table]).toEqual([1, 0, 0, 1, 0, 1, 0, 1]);
  });
});
