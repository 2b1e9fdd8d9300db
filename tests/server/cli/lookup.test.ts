import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { openTestDatabase, type TestDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { smallCases } from '../fixtures/small-cases';
import { runCli, spawnCli, temporaryFile } from './run-cli';

const rate = z.number().min(0).max(1);
const finding = z.strictObject({ kind: z.string(), id: z.string(), value: z.string() });

/** What the documentation promises of `lookup --json`; nothing missing, nothing of another type. */
const lookupShape = z.object({
  read: z.object({
    findings: z.array(
      z.strictObject({ kind: z.string(), id: z.string(), label: z.string(), value: z.string(), text: z.string() }),
    ),
    unread: z.array(z.string()),
    device: z.string().nullable(),
  }),
  cases: z.object({ total: z.int(), matching: z.int(), compatible: z.int() }),
  causes: z.array(
    z.strictObject({ id: z.string(), label: z.string(), probability: rate, low: rate, high: rate, matching: z.int() }),
  ),
  unlisted: z.object({ probability: rate }),
  similar: z.array(
    z.object({
      id: z.string(),
      score: z.number(),
      shared: z.array(finding),
      contradicting: z.array(finding.extend({ there: z.string() })),
      cause: z.string().nullable(),
    }),
  ),
  nextChecks: z.array(
    z.strictObject({
      id: z.string(),
      label: z.string(),
      stage: z.int().min(0).max(4),
      minutes: z.number().positive(),
      bits: z.number().min(0),
      bitsPerMinute: z.number().min(0),
      outcomes: z.array(z.strictObject({ value: z.string(), probability: rate })).min(2),
    }),
  ),
  fixes: z.array(z.strictObject({ id: z.string(), label: z.string(), tried: z.int(), resolved: z.int(), low: rate, high: rate })),
});

const planShape = z.object({
  steps: z
    .array(
      z.object({
        kind: z.enum(['check', 'fix']),
        id: z.string(),
        label: z.string(),
        stage: z.int(),
        minutes: z.number(),
        cost: z.number(),
        chanceBefore: rate,
        chanceAfter: rate,
        expectedMinutesSoFar: z.number(),
        expectedCostSoFar: z.number(),
      }),
    )
    .min(1),
  end: z.object({ kind: z.literal('stop-or-hand-over'), cost: z.number(), chanceLeft: rate }),
  expectedMinutes: z.number(),
  expectedCost: z.number(),
  chanceResolved: rate,
});

let opened: TestDatabase;
beforeAll(async () => {
  opened = openTestDatabase();
  await fillDatabase(opened.db, smallCases(200));
});
afterAll(() => opened.close());

describe('cli lookup', () => {
  it('prints one JSON document of the promised shape and nothing else', async () => {
    const run = await spawnCli(
      ['lookup', 'grey screen, clock present, zorble', '--device', 'quellbrook-8-rev-a', '--json'],
      opened.url,
    );
    expect(run).toMatchObject({ code: 0, err: '' });
    const result = lookupShape.parse(JSON.parse(run.out));
    const chances = result.causes.map((c) => c.probability);
    expect(chances).toEqual([...chances].sort((a, b) => b - a));
    expect(chances.reduce((sum, p) => sum + p, result.unlisted.probability)).toBeCloseTo(1, 9);
    expect(result.read).toMatchObject({ unread: ['zorble'], device: 'quellbrook-8-rev-a' });
    expect(result.cases.total).toBe(200);
    expect(result.similar).toHaveLength(10);
  });

  it('reads an unlisted symptom as absent where the list is complete', async () => {
    const ask = async (...more: string[]) => {
      const { out } = await runCli(opened.db, ['lookup', 'grey screen', '--device', 'quellbrook-8-rev-a', '--json', ...more]);
      return lookupShape.parse(JSON.parse(out)).causes.find((c) => c.id === 'video-ram-stuck-bit')?.probability ?? 0;
    };
    // A stuck bit of the video RAM nearly always garbles the picture: seen absent, it is less likely.
    expect(await ask('--complete')).toBeLessThan(await ask());
  });

  it('prints the same for people, with the counts beside', async () => {
    const run = await runCli(opened.db, ['lookup', 'grey screen']);
    expect(run.code).toBe(0);
    expect(run.out).toContain('Likely causes');
    expect(run.out).toContain('volunteered, not sampled');
  });

  it('refuses an unknown device with 1, and what was typed wrong with 2, on standard error alone', async () => {
    const unknown = await runCli(opened.db, ['lookup', 'grey screen', '--device', 'nope', '--json']);
    expect(unknown).toMatchObject({ code: 1, out: '' });
    expect(unknown.err).toContain('ormadic-duo');
    for (const args of [['lookup'], ['lookup', 'a', '--wat'], ['frobnicate'], ['lookup', 'x'.repeat(3000)]]) {
      expect(await runCli(opened.db, args)).toMatchObject({ code: 2, out: '' });
    }
  });
});

describe('cli plan', () => {
  it('prints one JSON document of the promised shape, money in the unit of the hour', async () => {
    const run = await runCli(opened.db, [
      'plan',
      'grey screen, clock present',
      '--device',
      'quellbrook-8-rev-a',
      '--hour-value',
      '20',
      '--json',
    ]);
    expect(run).toMatchObject({ code: 0, err: '' });
    const plan = planShape.parse(JSON.parse(run.out));
    const parts = plan.expectedCost - (plan.expectedMinutes * 20) / 60 - plan.end.chanceLeft * plan.end.cost;
    expect(parts).toBeGreaterThan(0);
    expect(parts).toBeLessThan(100);
  });

  it('keeps below the stage asked for, and leaves out what is to be skipped', async () => {
    const run = await runCli(opened.db, ['plan', 'grey screen', '--max-stage', '3', '--skip', 'replace-crystal', '--json']);
    const plan = planShape.parse(JSON.parse(run.out));
    expect(Math.max(...plan.steps.map((s) => s.stage))).toBeLessThanOrEqual(3);
    expect(plan.steps.map((s) => s.id)).not.toContain('replace-crystal');
  });

  it.each([
    ['--max-stage', '5'],
    ['--hour-value', '-1'],
    ['--instruments', 'crystal-ball'],
    ['--skip', 'no-such-step'],
  ])('refuses %s %s as typed wrong', async (option, value) => {
    expect(await runCli(opened.db, ['plan', 'grey screen', option, value])).toMatchObject({ code: 2, out: '' });
  });
});

describe('cli', () => {
  it('says in one sentence that there is no casebook yet', async () => {
    const run = await spawnCli(['lookup', 'grey screen'], 'file:/nowhere/at/all.db');
    expect(run).toMatchObject({ code: 1, out: '' });
    expect(run.err.trim().split('\n')).toHaveLength(1);
    expect(run.err).toContain('npm run demo');
  });

  it('says in one sentence that the database was not migrated', async () => {
    const run = await spawnCli(['lookup', 'grey screen'], `file:${temporaryFile('empty.db', '')}`);
    expect(run).toMatchObject({ code: 1, out: '' });
    expect(run.err.trim().split('\n')).toHaveLength(1);
    expect(run.err).toContain('npm run migrate');
  });
});
