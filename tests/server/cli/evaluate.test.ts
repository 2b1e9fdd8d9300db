import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { usualRepeats } from '../../../server/casebook/evaluate-casebook';
import { evaluationSchema } from '../../../shared/schemas/evaluation';
import { testDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { smallCases } from '../fixtures/small-cases';
import { runCli, temporaryFile } from './run-cli';

const rate = z.number().min(0).max(1);
const scores = z.strictObject({
  estimator: z.string(),
  accuracy: rate,
  top3: rate,
  logLoss: z.number(),
  brier: z.number(),
  ece: rate,
});
const tableShape = z.object({ rows: z.int(), causes: z.int(), folds: z.int(), results: z.array(scores).min(3) });

/** Sixty rows in which one column names the answer outright and the other says nothing. */
const tellingTable = [
  'sign,noise,answer',
  ...Array.from(
    { length: 60 },
    (_, i) => `${i % 3 === 0 ? 'red' : i % 3 === 1 ? 'green' : 'blue'},${i % 2},${['one', 'two', 'three'][i % 3]}`,
  ),
].join('\n');

describe('cli evaluate --table', () => {
  it('scores the default estimator first, then naive Bayes, then the prior, in the promised shape', async () => {
    const { db } = testDatabase();
    const file = temporaryFile('table.csv', tellingTable);
    const run = await runCli(db, [
      'evaluate',
      '--table',
      file,
      '--cause-column',
      'answer',
      '--folds',
      '5',
      '--repeats',
      '1',
      '--json',
    ]);
    expect(run).toMatchObject({ code: 0, err: '' });
    const result = tableShape.parse(JSON.parse(run.out));
    expect(result).toMatchObject({ rows: 60, causes: 3, folds: 5 });
    const [ours] = result.results;
    const [plain, prior] = ['naive Bayes', 'prior'].map((name) => result.results.find((r) => r.estimator === name));
    expect(ours?.accuracy).toBe(1);
    expect(plain?.accuracy).toBe(1);
    // Three answers equally common: the prior alone knows nothing, ln 3 = 1.0986 nats.
    expect(prior?.logLoss).toBeCloseTo(Math.log(3), 1);
    expect(ours?.logLoss).toBeLessThan(0.2);
  });

  it('refuses a table without the column, a missing file, and a missing option', async () => {
    const { db } = testDatabase();
    const file = temporaryFile('table.csv', tellingTable);
    const wrong = await runCli(db, ['evaluate', '--table', file, '--cause-column', 'nope']);
    expect(wrong.code).toBe(1);
    expect(wrong.err).toContain('sign, noise, answer');
    expect((await runCli(db, ['evaluate', '--table', '/nowhere.csv', '--cause-column', 'a'])).code).toBe(1);
    expect((await runCli(db, ['evaluate', '--table', file])).code).toBe(2);
    expect((await runCli(db, ['evaluate', '--table', file, '--cause-column', 'answer', '--folds', '1'])).code).toBe(2);
  });
});

describe('cli evaluate', () => {
  it('splits a small casebook three times and one of thousands once', () => {
    expect([20, 999, 1000, 4200].map(usualRepeats)).toEqual([3, 3, 1, 1]);
  });

  it('scores the casebook at every moment of a repair, and better than the bare prior', async () => {
    const { db } = testDatabase();
    await fillDatabase(db, smallCases(120));
    const run = await runCli(db, ['evaluate', '--folds', '3', '--repeats', '1', '--json']);
    expect(run.code).toBe(0);
    const result = tableShape
      .extend({ cuts: z.array(z.object({ cut: z.string(), results: z.array(scores.loose()) })) })
      .parse(JSON.parse(run.out));
    expect(result.rows).toBe(120);
    expect(result.cuts.map((c) => c.cut)).toEqual([
      'symptoms only',
      'plus stage-0 checks',
      'before the first fix',
      'before the proof',
    ]);
    const [ours] = result.results;
    const prior = result.results.find((r) => r.estimator === 'prior');
    expect(ours?.logLoss).toBeLessThan((prior?.logLoss ?? 0) - 0.2);
    expect(run.err).toContain('0 of 3 parts done');
    expect(run.err).toMatch(/1 of 3 parts done, about \d+ (s|min) left/);
    expect(run.err).toMatch(/3 of 3 parts done$/m);
  }, 90_000);

  it('prints every part of an evaluation, and keeps it as the latest', async () => {
    const { db } = testDatabase();
    await fillDatabase(db, smallCases(40));
    const run = await runCli(db, ['evaluate', '--folds', '2', '--repeats', '1']);
    expect(run.code).toBe(0);
    for (const heading of ['40 cases, 2 parts, once over', 'What was known: before the proof', 'Stated chances', 'By device', 'By cause']) {
      expect(run.out).toContain(heading);
    }
    const kept = JSON.parse((await db.evaluation.findFirstOrThrow()).document) as { brackets: { bins: unknown[] } };
    expect(kept.brackets.bins).toHaveLength(10);
  }, 90_000);

  it('holds the cases against what is known to be true of their world, and says where no world is at hand', async () => {
    const { db } = testDatabase();
    const cases = smallCases(40);
    await fillDatabase(db, cases);
    const sure = cases[0]?.content.causes[0]?.cause ?? '';
    let asked = 0;
    const args = ['evaluate', '--demo', '--units', '0', '--folds', '2', '--repeats', '1'];
    const run = await runCli(db, args, '', {
      truePosterior: () => (asked++ % 3 === 0 ? null : new Map([[sure, 1]])),
      simulateRepairs: () => {
        throw new Error('No units were asked for.');
      },
      repairLines: () => [],
    });
    expect(run).toMatchObject({ code: 0 });
    expect(run.out).toContain('Against the exact probabilities: symptoms only');
    const { knownTruth } = evaluationSchema.parse(JSON.parse((await db.evaluation.findFirstOrThrow()).document));
    expect(knownTruth?.repairs).toBeNull();
    // Whatever is not that one cause is wrong in this world, so the excess is -ln of what it was given: near ln 1/share.
    expect(knownTruth?.cuts[0]?.results[0]).toMatchObject({ estimator: 'weighted naive Bayes' });
    expect(knownTruth?.cuts[0]?.results[0]?.excessLogLoss).toBeGreaterThan(0.2);
    expect((await runCli(db, args)).code).toBe(2);
  }, 90_000);

  it('refuses a casebook that is too small to be split', async () => {
    const { db } = testDatabase();
    await fillDatabase(db, smallCases(8));
    const run = await runCli(db, ['evaluate']);
    expect(run.code).toBe(1);
    expect(run.err).toContain('at least 20 are needed');
  });
});
