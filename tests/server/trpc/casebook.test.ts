import { describe, expect, it } from 'vitest';
import { plainCase } from '../fixtures/plain-case';
import { smallCases } from '../fixtures/small-cases';
import { testCaller } from './test-caller';

const check = {
  kind: 'check',
  check: 'clock-at-processor',
  outcome: 'absent',
  designator: 'Y1',
  value: null,
  unit: null,
} as const;
const fix = (id: string, result: 'cured' | 'no-change' | 'partly') => ({
  kind: 'fix' as const,
  fixes: [{ fix: id, designator: null }],
  result,
});

describe('casebook.getCase', () => {
  it('gives a published case in the order it happened, with the words to show it', async () => {
    const steps = [fix('replace-video-generator', 'no-change'), check, fix('replace-crystal', 'cured')];
    const caller = await testCaller([plainCase(1, { steps, provedByStep: 1 })]);
    const view = await caller.casebook.getCase({ id: plainCase(1).id });
    expect(view.device).toEqual({ slug: 'quellbrook-8-rev-a', label: 'Quellbrook 8, revision A', level: 'board', model: 'quellbrook-8' });
    expect(view.steps).toMatchObject([
      { kind: 'fix', result: 'no-change', fixes: [{ label: 'Replace the video generator' }] },
      { kind: 'check', label: 'Clock at the processor', outcomeLabel: 'no pulse', asWorking: false, proved: true },
      { kind: 'fix', result: 'cured', stage: 3 },
    ]);
    expect(view.causes).toEqual([
      { id: 'clock-crystal-stopped', label: 'Clock crystal stopped', role: 'clock-crystal', designators: [] },
    ]);
  });

  it('does not find a case that waits for review', async () => {
    const caller = await testCaller([{ ...plainCase(1), status: 'submitted' }]);
    await expect(caller.casebook.getCase({ id: plainCase(1).id })).rejects.toMatchObject({ code: 'NOT_FOUND' });
  });
});

describe('casebook.overview', () => {
  it('counts the accepted cases, per model too', async () => {
    const caller = await testCaller([
      plainCase(1),
      plainCase(2, { device: 'ormadic-duo' }),
      { ...plainCase(3), status: 'draft' },
    ]);
    expect(await caller.casebook.overview()).toEqual({
      cases: 2,
      devices: 2,
      boards: 3,
      workingUnits: 0,
      demo: false,
      casesPerDevice: [
        { slug: 'quellbrook-8', label: 'Quellbrook 8', cases: 1 },
        { slug: 'ormadic-duo', label: 'Ormadic Duo', cases: 1 },
      ],
    });
  });
});

describe('casebook.listCases', () => {
  it('pages through a model and its boards, latest months first, each case once', async () => {
    const cases = smallCases(60);
    const caller = await testCaller(cases);
    const seen: { id: string; month: string }[] = [];
    let cursor: string | null = null;
    do {
      const page: Awaited<ReturnType<typeof caller.casebook.listCases>> = await caller.casebook.listCases({
        device: 'quellbrook-8',
        cursor,
        take: 7,
      });
      seen.push(...page.cases);
      cursor = page.next;
    } while (cursor !== null);
    const expected = cases.filter((c) => c.content.device.startsWith('quellbrook-8')).map((c) => c.id);
    expect(seen.map((c) => c.id).sort()).toEqual(expected.sort());
    expect(seen.map((c) => c.month)).toEqual(
      seen
        .map((c) => c.month)
        .sort()
        .reverse(),
    );
  });
});

describe('casebook.suggest', () => {
  it('finds an entry by the beginning of its words, by a synonym and in spite of a slip', async () => {
    const caller = await testCaller([]);
    const first = async (text: string) => (await caller.casebook.suggest({ text }))[0]?.id;
    expect(await first('grey sc')).toBe('grey-screen');
    expect(await first('silent')).toBe('no-sound');
    expect(await first('gabled pic')).toBe('garbled-picture');
    expect(await first('zorble')).toBeUndefined();
    expect(await first('   ')).toBeUndefined();
  });

  it('keeps to the kinds asked for, with the values that a finding can take', async () => {
    const caller = await testCaller([]);
    const found = await caller.casebook.suggest({ text: 'clock', kinds: ['check'] });
    expect(found.map((f) => f.id)).toEqual(['clock-at-processor']);
    expect(found[0]?.values).toEqual([
      { value: 'pulsing', label: 'pulsing' },
      { value: 'absent', label: 'no pulse' },
    ]);
  });
});

describe('casebook.fixesFor', () => {
  it('counts tries and results, failed ones too, and ranks by the lower end', async () => {
    const many = Array.from({ length: 50 }, (_, i) =>
      plainCase(i + 1, { steps: [fix('replace-crystal', i < 40 ? 'cured' : 'no-change')] }),
    );
    const once = plainCase(99, { steps: [fix('replace-regulator', 'cured')] });
    const partly = plainCase(98, { steps: [fix('replace-video-ram', 'partly')] });
    const caller = await testCaller([...many, once, partly]);
    const fixes = await caller.casebook.fixesFor({ symptoms: ['grey-screen'] });
    expect(fixes.map(({ id, tried, resolved, partly: half, noChange }) => [id, tried, resolved, half, noChange])).toEqual([
      ['replace-crystal', 50, 40, 0, 10],
      ['replace-regulator', 1, 1, 0, 0],
      ['replace-video-ram', 1, 0, 1, 0],
    ]);
    // Jeffreys interval, 90 %, 40 of 50: Beta(40.5, 10.5) gives .694 to .880 (Brown, Cai & DasGupta 2001, the method).
    expect(fixes[0]?.low).toBeCloseTo(0.694, 2);
    expect(fixes[0]?.high).toBeCloseTo(0.88, 2);
  });

  it('ranks a device with few tries by what is known along its path, by the very interval that it gives', async () => {
    const there = Array.from({ length: 30 }, (_, i) =>
      plainCase(i + 1, {
        device: 'ormadic-duo',
        steps: [fix(i % 2 ? 'replace-crystal' : 'replace-video-ram', i % 2 ? 'cured' : 'no-change')],
      }),
    );
    const here = [40, 41].map((n) => plainCase(n, { steps: [fix(n === 40 ? 'replace-crystal' : 'replace-video-ram', 'cured')] }));
    const caller = await testCaller([...there, ...here]);
    const fixes = await caller.casebook.fixesFor({ device: 'quellbrook-8' });
    expect(fixes.map((f) => [f.id, f.tried, f.resolved])).toEqual([
      ['replace-crystal', 1, 1],
      ['replace-video-ram', 1, 1],
    ]);
    const lows = fixes.map((f) => f.low);
    expect(lows).toEqual([...lows].sort((a, b) => b - a));
    expect(lows[0]).toBeGreaterThan((lows[1] ?? 1) + 0.1);
  });

  it('puts what was never tried on the device after what was, however well it did elsewhere', async () => {
    const there = Array.from({ length: 30 }, (_, i) =>
      plainCase(i + 1, { device: 'ormadic-duo', steps: [fix('replace-crystal', 'cured')] }),
    );
    const here = plainCase(40, { steps: [fix('replace-video-ram', 'no-change')] });
    const caller = await testCaller([...there, here]);
    const fixes = await caller.casebook.fixesFor({ device: 'quellbrook-8' });
    expect(fixes.map((f) => [f.id, f.tried])).toEqual([
      ['replace-video-ram', 1],
      ['replace-crystal', 0],
    ]);
  });

  it('narrows to a device and to a cause', async () => {
    const here = plainCase(1, { steps: [fix('replace-crystal', 'cured')] });
    const there = plainCase(2, { device: 'ormadic-duo', steps: [fix('replace-crystal', 'no-change')], causes: [], proof: null });
    const caller = await testCaller([here, there]);
    const tried = async (scope: object) => (await caller.casebook.fixesFor(scope))[0]?.tried;
    expect(await tried({})).toBe(2);
    expect(await tried({ device: 'quellbrook-8' })).toBe(1);
    expect(await tried({ cause: 'clock-crystal-stopped' })).toBe(1);
    expect(await tried({ cause: 'supply-dead' })).toBeUndefined();
  });
});
