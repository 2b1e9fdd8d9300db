import { describe, expect, it } from 'vitest';
import { listMarks } from '../../../server/repositories/submission-contents';
import { insertCases } from '../../../server/repositories/insert-cases';
import { smallCases } from '../fixtures/small-cases';
import { testDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { runCli } from './run-cli';

/** A database as it may have been before the rules: three clean cases, and two that say too much. */
async function oldDatabase() {
  const { db } = testDatabase();
  await fillDatabase(db, smallCases(3));
  const [first, second] = smallCases(2, 7);
  if (!first || !second) throw new Error('Two cases were asked for.');
  const told = (record: typeof first, narrative: string, pin = 'OUT') => ({
    ...record,
    content: { ...record.content, narrative, readings: [{ designator: 'U1', pin, state: 'high' as const, value: null, unit: null }] },
  });
  const narrative = 'Cured. Write to zork@bench.example, or call +44 20 7946 0958.';
  await db.$transaction((tx) =>
    insertCases(tx, [told(first, narrative), { ...told(second, 'Clean.', 'zork@bench.ex'), status: 'submitted' }], { newId: () => '' }),
  );
  return { db, first: first.id, second: second.id, narrative };
}

describe('cli rescan', () => {
  it('marks what it finds in the texts of stored cases, whatever their status, and changes no text', async () => {
    const { db, first, second, narrative } = await oldDatabase();
    const run = await runCli(db, ['rescan', '--json']);
    expect(run).toMatchObject({ code: 0, err: '' });
    expect(JSON.parse(run.out)).toMatchObject({ cases: 5, marks: 3, added: 3 });
    const marks = await listMarks(db, first);
    expect(marks.map(({ field, kind, start, end }) => [field, kind, narrative.slice(start, end)])).toEqual([
      ['narrative', 'mail-address', 'zork@bench.example'],
      ['narrative', 'phone-number', '+44 20 7946 0958'],
    ]);
    expect(await listMarks(db, second)).toMatchObject([{ field: 'readings.0.pin', kind: 'mail-address' }]);
    expect((await db.caseFile.findUniqueOrThrow({ where: { id: first } })).narrative).toBe(narrative);
  });

  it('adds nothing when it is run again, and keeps the marks that were there', async () => {
    const { db, first } = await oldDatabase();
    await db.detailMark.create({
      data: { caseId: first, position: 0, field: 'narrative', kind: 'handle', certainty: 'possible', startOffset: 0, endOffset: 5 },
    });
    await runCli(db, ['rescan']);
    const marks = await listMarks(db, first);
    expect(marks).toHaveLength(3);
    const again = await runCli(db, ['rescan']);
    expect(again.out).toContain('4 marks in 2 of them, 0 of the marks new');
    expect(await listMarks(db, first)).toEqual(marks);
  });
});
