import { describe, expect, it } from 'vitest';
import { countCases, streamCases } from '../../../server/repositories/case-repository';
import { testDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { plainCase } from '../fixtures/plain-case';
import { runCli, temporaryFile } from './run-cli';

const line = (value: unknown) => `${JSON.stringify(value)}\n`;
const personal = plainCase(2, { narrative: 'Bought from Sarah Whitcombe on 3 May 2021.\nMail tom@bench.example. R12 was open.' });

describe('cli import of personal details', () => {
  it('refuses the row with what to remove, per line and field, and imports nothing', async () => {
    const { db } = testDatabase();
    await fillDatabase(db);
    const run = await runCli(db, ['import', temporaryFile('a.jsonl', line(plainCase(1)) + line(personal)), '--json']);
    expect(run.code).toBe(1);
    expect(JSON.parse(run.out)).toMatchObject({
      rows: 2,
      added: 0,
      refused: [
        { line: 2, field: 'narrative', reason: 'Remove the name "Sarah Whitcombe", or write "[name]".' },
        { line: 2, field: 'narrative', reason: 'Remove the exact date "3 May 2021", or write "May 2021".' },
        { line: 2, field: 'narrative', reason: 'Remove the mail address "tom@bench.example", or write "[mail address]".' },
      ],
    });
    expect(run.err).toContain('a.jsonl, line 2, narrative: Remove the name "Sarah Whitcombe"');
    expect(await countCases(db)).toBe(0);
  });

  it('replaces them where told to, says so, and stores nothing of them', async () => {
    const { db } = testDatabase();
    await fillDatabase(db);
    const run = await runCli(db, ['import', temporaryFile('a.jsonl', line(personal)), '--replace-details', '--accept']);
    expect(run.code).toBe(0);
    expect(run.err).toContain('line 1, narrative: Replaced the exact date "3 May 2021" by "May 2021".');
    const stored: string[] = [];
    for await (const { content } of streamCases(db)) stored.push(content.narrative);
    expect(stored).toEqual(['Bought from [name] on May 2021.\nMail [mail address]. R12 was open.']);
  });

  it("refuses a pin's name that is a contact, even where it replaces", async () => {
    const { db } = testDatabase();
    await fillDatabase(db);
    const readings = [{ designator: 'U1', pin: 'a@b.example', state: null, value: 5, unit: 'V' as const }];
    const run = await runCli(db, ['import', temporaryFile('a.jsonl', line(plainCase(3, { readings }))), '--replace-details']);
    expect(run.code).toBe(1);
    expect(run.err).toContain('line 1, readings.0.pin: Remove the mail address "a@b.example".');
  });
});
