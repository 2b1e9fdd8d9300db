import { describe, expect, it } from 'vitest';
import { countCases, streamCases } from '../../../server/repositories/case-repository';
import { listEvents } from '../../../server/repositories/event-log-repository';
import type { CaseRecord } from '../../../shared/schemas/case';
import { openTestDatabase, testDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { plainCase, plainContent } from '../fixtures/plain-case';
import { smallCases } from '../fixtures/small-cases';
import { runCli, spawnCli, temporaryFile } from './run-cli';

async function all(source: AsyncIterable<CaseRecord>): Promise<CaseRecord[]> {
  const items: CaseRecord[] = [];
  for await (const item of source) items.push(item);
  return items;
}

const line = (value: unknown) => `${JSON.stringify(value)}\n`;

describe('cli export, then import', () => {
  /** Texts and lists that break careless writers. */
  const awkward = plainCase(7, {
    narrative: '=SUM(A1) said "the screen";\r\nthen a line, and \'another\'\n\n\ttab',
    symptoms: [
      { symptom: 'grey-screen', present: true },
      { symptom: 'no-sound', present: false },
    ],
    steps: [
      { kind: 'check', check: 'supply-apart', outcome: 'in-tolerance', designator: null, value: 5.02, unit: 'V' },
      { kind: 'check', check: 'clock-at-processor', outcome: 'absent', designator: 'Y1', value: null, unit: null },
      {
        kind: 'fix',
        fixes: [
          { fix: 'replace-crystal', designator: 'Y1' },
          { fix: 'replace-regulator', designator: null },
        ],
        result: 'cured',
      },
    ],
    readings: [
      { designator: 'U1', pin: 'A=1; 5%', state: null, value: -0.5, unit: 'V' },
      { designator: 'U5', pin: '7', state: 'floating', value: null, unit: null },
    ],
    causes: [
      { cause: 'clock-crystal-stopped', designators: ['Y1', 'Y2'] },
      { cause: 'regulator-dead', designators: [] },
    ],
    provedByStep: 1,
    afterRepairChecks: ['supply-apart', 'clock-at-processor'],
    soakMinutes: 0,
  });

  it.each(['jsonl', 'csv'])('gives equal cases in an empty casebook, as %s', async (format) => {
    const from = testDatabase();
    const to = testDatabase();
    await fillDatabase(from.db, [...smallCases(80), awkward]);
    await fillDatabase(to.db);
    const exported = await runCli(from.db, ['export', '--format', format]);
    const file = temporaryFile(`cases.${format}`, exported.out);
    const imported = await runCli(to.db, ['import', file, '--accept']);
    expect(imported).toMatchObject({ code: 0, err: '' });
    expect(await all(streamCases(to.db))).toEqual(await all(streamCases(from.db)));
    const again = await runCli(to.db, ['import', file, '--accept', '--json']);
    expect(JSON.parse(again.out)).toEqual({ rows: 81, added: 0, alreadyThere: 81, refused: [] });
  });

  it('writes the accepted cases alone, as a process of its own', async () => {
    const opened = openTestDatabase();
    await fillDatabase(opened.db, [plainCase(1), { ...plainCase(2), status: 'submitted' }]);
    const run = await spawnCli(['export'], opened.url);
    await opened.close();
    expect(run).toMatchObject({ code: 0, err: '' });
    expect(run.out).toBe(line(plainCase(1)));
  });
});

describe('cli import', () => {
  it('lets cases enter as submitted, whatever their status says, and accepts and logs only when told to', async () => {
    const { db } = testDatabase();
    await fillDatabase(db);
    const first = await runCli(db, ['import', temporaryFile('a.jsonl', line(plainCase(1)))]);
    expect(first.code).toBe(0);
    expect([await countCases(db, 'submitted'), await countCases(db, 'accepted')]).toEqual([1, 0]);
    await runCli(db, ['import', temporaryFile('b.jsonl', line(plainCase(2))), '--accept']);
    expect(await countCases(db, 'accepted')).toBe(1);
    const kinds = (await listEvents(db)).map(({ kind, actor }) => `${kind} by ${actor}`);
    expect(kinds.sort()).toEqual(['import by test', 'import-accepted by test']);
  });

  it('takes the content alone, without an id', async () => {
    const { db } = testDatabase();
    await fillDatabase(db);
    const file = temporaryFile('a.jsonl', line(plainContent()) + line(plainContent({ month: '2025-04' })));
    expect((await runCli(db, ['import', file])).code).toBe(0);
    expect((await runCli(db, ['import', file])).code).toBe(0);
    expect(await countCases(db)).toBe(2);
  });

  const bad = [
    line(plainCase(1)),
    'not json\n',
    line({ ...plainContent(), month: '2025-13' }),
    '\n',
    line({ ...plainContent(), symptoms: [{ symptom: 'on-fire', present: true }] }),
    line({ ...plainContent(), symptons: [] }),
    line({ id: 'no', content: plainContent() }),
    line(['a', 'list']),
  ].join('');

  it('reports every bad row with line, field and reason, and imports nothing', async () => {
    const { db } = testDatabase();
    await fillDatabase(db);
    const run = await runCli(db, ['import', temporaryFile('bad.jsonl', bad), '--json']);
    expect(run.code).toBe(1);
    const { refused, ...counts } = JSON.parse(run.out) as { refused: { line: number; field: string; reason: string }[] };
    expect(counts).toEqual({ rows: 7, added: 0, alreadyThere: 0 });
    expect(refused.map((r) => [r.line, r.field])).toEqual([
      [2, ''],
      [3, 'month'],
      [5, 'symptoms.0.symptom'],
      [6, 'symptons'],
      [7, 'id'],
      [8, ''],
    ]);
    expect(refused[1]?.reason).toBe('Write the month as YYYY-MM.');
    expect(run.err).toContain('bad.jsonl, line 5, symptoms.0.symptom: There is no symptom "on-fire" in the vocabulary.');
    expect(await countCases(db)).toBe(0);
  });

  it('keeps the good rows where told to', async () => {
    const { db } = testDatabase();
    await fillDatabase(db);
    const run = await runCli(db, ['import', temporaryFile('bad.jsonl', bad), '--keep-good']);
    expect(run.code).toBe(0);
    expect(run.err).toContain('line 3, month');
    expect(await countCases(db)).toBe(1);
  });

  it('reports the line of a CSV row below cells that run over several lines', async () => {
    const from = testDatabase();
    await fillDatabase(from.db, [plainCase(1, { narrative: 'one\ntwo\nthree' }), plainCase(2, { month: '2025-04' })]);
    const { out } = await runCli(from.db, ['export', '--format', 'csv']);
    const broken = out.replace('2025-04', '2025-4');
    const run = await runCli(from.db, ['import', temporaryFile('a.csv', broken), '--json']);
    expect(run.code).toBe(1);
    expect(JSON.parse(run.out)).toMatchObject({ rows: 2, refused: [{ line: 5, field: 'month' }] });
  });

  it.each([
    ['a column that is missing', 'device,month\nx,2025-01\n', { line: 1, field: 'symptoms' }],
    ['a column that is unknown', `colour\nred\n`, { line: 1, field: 'colour' }],
    ['a quote that never ends', 'device,"month\n', { line: 1, field: '' }],
  ])('refuses a CSV file with %s', async (_name, text, expected) => {
    const { db } = testDatabase();
    await fillDatabase(db);
    const run = await runCli(db, ['import', temporaryFile('a.csv', text), '--json']);
    expect(run.code).toBe(1);
    expect((JSON.parse(run.out) as { refused: unknown[] }).refused).toContainEqual(expect.objectContaining(expected));
  });

  it('refuses a file that is not there, and an empty database, in one sentence each', async () => {
    const { db } = testDatabase();
    expect(await runCli(db, ['import', '/nowhere/cases.jsonl'])).toMatchObject({ code: 1, out: '' });
    const file = temporaryFile('a.jsonl', line(plainCase(1)));
    const empty = await runCli(db, ['import', file]);
    expect(empty.code).toBe(1);
    expect(empty.err).toContain('The casebook has no devices');
  });
});
