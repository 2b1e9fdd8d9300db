import { createHash } from 'node:crypto';
import { describe, expect, it, vi } from 'vitest';
import { demoFaultWorld, demoWorld } from '../../seed/demo-world';
import { createExperience } from '../../seed/draw-cases/suspicion';
import { type BoardModel, wayCount } from '../../seed/engine/board-model';
import { whatIsShown } from '../../seed/engine/read-notation';
import { unknownNames } from '../../seed/engine/unknown-names';
import { faultModel } from '../../seed/fault-model';
import { vocabulary } from '../../seed/vocabulary';
import { FIX_RESULTS } from '../../shared/schemas/case';

// Whole worlds are drawn here: seconds on an idle machine, more on a busy one.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

/** Keys in order at every level, so that only numbers and names count. */
function canonical(value: unknown): unknown {
  if (value === null || typeof value !== 'object') return value;
  if (Array.isArray(value)) return value.map(canonical);
  const entries = Object.entries(value).map(([key, each]) => [key, canonical(each)] as const);
  return Object.fromEntries(entries.sort(([a], [b]) => (a < b ? -1 : 1)));
}

const sha256 = (value: unknown) =>
  createHash('sha256')
    .update(JSON.stringify(canonical(value)))
    .digest('hex');

/** A board's numbers to six figures, so that the last bit of a processor's logarithm does not matter. */
function plainNumbers(numbers: BoardModel) {
  const six = (table: Float64Array) => [...table].map((p) => Number(p.toPrecision(6)));
  return {
    causes: numbers.causes,
    prior: six(numbers.prior),
    wayCause: [...numbers.wayCause],
    wayShare: six(numbers.wayShare),
    symptoms: Object.fromEntries([...numbers.symptoms].map(([slug, symptom]) => [slug, six(symptom.present)])),
    checks: Object.fromEntries([...numbers.checks].map(([slug, check]) => [slug, [check.outcomes, six(check.table)]])),
    fixes: Object.fromEntries([...numbers.fixes].map(([slug, fix]) => [slug, [fix.badPart, six(fix.good), six(fix.bad)]])),
  };
}

const boards = demoFaultWorld.boards;

describe('the fault model', () => {
  // Figures are measured against these numbers. Who changes them measures everything again and says so.
  it('is frozen as written', () => {
    expect(sha256(faultModel)).toBe('1e6ef31c73176a0dc82ce9b64513ff6de52d49f8466b0a452d5c88d66273ba18');
  });

  it('is frozen as the numbers of every board', () => {
    expect(sha256(Object.fromEntries(boards.map((board) => [board, plainNumbers(demoFaultWorld.numbers(board))])))).toBe(
      'c5e77c640b75590cfbdca5787d712fe8c200a6fdfa75962bee6f15fc1a4b3d32',
    );
  });

  it('names nothing that the vocabulary does not have, and leaves out no cause', () => {
    expect(unknownNames(faultModel, vocabulary)).toEqual([]);
    expect(vocabulary.causes.map((cause) => cause.slug).filter((slug) => !faultModel.causes[slug])).toEqual([]);
  });

  it.each(boards)('has a prior that sums to 1 and tables of probabilities on %s', (board) => {
    const numbers = demoFaultWorld.numbers(board);
    expect(numbers.prior.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
    const shares = new Map<number, number>();
    numbers.wayCause.forEach((cause, way) => shares.set(cause, (shares.get(cause) ?? 0) + (numbers.wayShare[way] as number)));
    for (const share of shares.values()) expect(share).toBeCloseTo(1, 12);
    for (const { present } of numbers.symptoms.values()) expect(present.every((p) => p > 0 && p < 1)).toBe(true);
    for (const { outcomes, table } of numbers.checks.values()) expectDistributions(table, outcomes.length, numbers);
    for (const { good, bad } of numbers.fixes.values()) {
      expectDistributions(good, FIX_RESULTS.length, numbers);
      expectDistributions(bad, FIX_RESULTS.length, numbers);
    }
  });

  it.each(boards)('gives every cause on %s a symptom, checks that tell and, where there is a fault, a fix', (board) => {
    const numbers = demoFaultWorld.numbers(board);
    const { likelihood, telling } = createExperience(numbers);
    const poor = numbers.causes.filter((cause, index) => {
      const shown = [...numbers.symptoms.keys()].some(
        (id) => (likelihood({ kind: 'symptom', id, value: 'present' })[index] as number) > 0.1,
      );
      const distances = [...numbers.checks.keys()].map((check) => telling(check)[index] as number).sort((x, y) => y - x);
      const told = (distances[0] as number) > 0.3 && (distances[1] as number) > 0.08;
      const fixed = vocabulary.fixes.some((fix) => numbers.fixes.has(fix.slug) && fix.addresses.includes(cause));
      return !shown || (cause !== 'no-fault-found' && !(told && fixed));
    });
    expect(poor).toEqual([]);
  });
});

function expectDistributions(table: Float64Array, size: number, numbers: BoardModel): void {
  expect(table.length).toBe(wayCount(numbers) * size);
  let worst = 0;
  for (let at = 0; at < table.length; at += size) {
    let sum = 0;
    for (let i = at; i < at + size; i += 1) sum += (table[i] as number) >= 0 ? (table[i] as number) : Number.NaN;
    worst = Math.max(worst, Math.abs(sum - 1));
  }
  expect(worst).toBeLessThan(1e-12);
}

describe('whatIsShown', () => {
  const states = { dead: 'cold @no-power:.5 light=dark', cold: 'light=dim:.6 touch=cold:.7 @quiet' };

  it('lets the nearest text decide a check and adds symptoms up', () => {
    const shown = whatIsShown(['dead light=lit:.2 @no-power:.5', 'touch=warm'], states, 'drive');
    expect([...(shown.checks.get('light') ?? [])]).toEqual([['lit', 0.2]]);
    expect([...(shown.checks.get('touch') ?? [])]).toEqual([['warm', 0.93]]);
    expect(shown.symptoms.get('no-power')).toBeCloseTo(0.75, 12);
    expect(shown.symptoms.get('quiet')).toBe(0.9);
    expect([...shown.states].sort()).toEqual(['cold', 'dead']);
  });

  it('adds what a state shows on one category', () => {
    const more = { ...states, 'cold in drive': '@quiet:.5 touch=cold:.2' };
    expect(whatIsShown(['cold'], more, 'drive').symptoms.get('quiet')).toBeCloseTo(0.95, 12);
    expect(whatIsShown(['cold'], more, 'console').symptoms.get('quiet')).toBe(0.9);
  });

  it('refuses an unknown state and a number above 1', () => {
    expect(() => whatIsShown(['warm'], states, 'drive')).toThrow('no state warm');
    expect(() => whatIsShown(['@quiet:1.2'], states, 'drive')).toThrow('No probability');
  });
});

describe('facts of the trade on the fault model (common practice, no source)', () => {
  const pulsing = (id: string) => ({ kind: 'check', id, value: 'pulsing' }) as const;
  const odds = (p: number | undefined) => (p as number) / (1 - (p as number));
  const computers = boards.filter((board) =>
    ['home-computer', 'console', 'arcade-board'].includes(demoFaultWorld.place(board).device.category),
  );

  it.each(computers)('a clock at the processor and at the video generator all but clears the crystal on %s', (board) => {
    const before = odds(demoWorld.prior(board).get('crystal-dead'));
    const after = odds(
      demoWorld.truePosterior(board, [pulsing('clock-at-processor'), pulsing('clock-at-video-generator')]).get('crystal-dead'),
    );
    expect(before / after).toBeGreaterThan(10);
  });

  it.each(['quellbrook-8-rev-a', 'ormadic-duo-rev-1'])(
    'a working unit on the same chain clears supply, cable and display on %s',
    (board) => {
      const prior = demoWorld.prior(board);
      const after = demoWorld.truePosterior(board, [{ kind: 'check', id: 'working-unit-same-chain', value: 'works' }]);
      for (const cause of [
        'external-supply-dead',
        'external-supply-low',
        'av-cable-open',
        'display-faulty',
        'wrong-input-selected',
      ]) {
        expect(odds(prior.get(cause)) / odds(after.get(cause))).toBeGreaterThan(5);
      }
    },
  );

  it.each(boards)('a fix that changed nothing counts at least fivefold against what it addresses on %s', (board) => {
    const prior = demoWorld.prior(board);
    for (const fix of vocabulary.fixes.filter((each) => demoFaultWorld.numbers(board).fixes.has(each.slug))) {
      const after = demoWorld.truePosterior(board, [{ kind: 'fix', id: fix.slug, value: 'no-change' }]);
      const ratio = (cause: string) => (after.get(cause) as number) / (prior.get(cause) as number);
      const others = [...prior.keys()].filter((cause) => !fix.addresses.includes(cause) && cause !== 'no-fault-found');
      const weakest = Math.min(...others.map(ratio));
      const partial = ['clean-corroded-area', 'refer-crt-rejuvenation', 'replace-backup-battery', 'replace-reset-timing'];
      if (partial.includes(fix.slug)) continue;
      for (const cause of fix.addresses.filter((each) => prior.has(each))) {
        expect(weakest / ratio(cause), `${fix.slug} against ${cause}`).toBeGreaterThan(5);
      }
    }
  });
});
