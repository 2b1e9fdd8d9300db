import { describe, expect, it } from 'vitest';
import { testDatabase } from '../../setup/test-database';
import { addPerson, append, tamper } from '../log/log-world';
import { runCli, temporaryFile } from './run-cli';

async function threeEntries() {
  const { db, url } = testDatabase();
  for (let n = 1; n <= 3; n++) await append(db, { detail: { n } });
  return { db, url };
}

describe('log verify', () => {
  it('prints a checkpoint, and holds the log against it later', async () => {
    const { db, url } = await threeEntries();
    const first = await runCli(db, ['log', 'verify']);
    expect(first).toMatchObject({ code: 0, err: '' });
    const checkpoint = /Checkpoint: (3:[0-9a-f]{64})/.exec(first.out)?.[1] ?? '';
    await append(db, {});
    expect((await runCli(db, ['log', 'verify', '--checkpoint', checkpoint])).out).toContain('intact: 4 entries');
    tamper(url, 'DELETE FROM "LogEntry" WHERE "seq" > 2');
    expect((await runCli(db, ['log', 'verify'])).code).toBe(0);
    const cut = await runCli(db, ['log', 'verify', '--checkpoint', checkpoint]);
    expect(cut).toMatchObject({ code: 1, out: '' });
    expect(cut.err).toMatch(/breaks at entry 3: it is missing/);
  });

  it('names the first entry that breaks, with exit code 1', async () => {
    const { db, url } = await threeEntries();
    tamper(url, `UPDATE "LogEntry" SET "kind" = 'case-declined' WHERE "seq" IN (2, 3)`);
    expect(await runCli(db, ['log', 'verify'])).toMatchObject({ code: 1, out: '', err: expect.stringContaining('at entry 2:') });
  });

  it('says so where the log is empty, and where a checkpoint was typed wrong', async () => {
    const { db } = testDatabase();
    expect(await runCli(db, ['log', 'verify'])).toMatchObject({ code: 0, out: 'The log is empty.\n' });
    expect(await runCli(db, ['log', 'verify', '--checkpoint', '3'])).toMatchObject({ code: 2 });
  });
});

describe('log export', () => {
  it('writes a file that verifies without the database, until a line of it is changed', async () => {
    const { db } = await threeEntries();
    const { out } = await runCli(db, ['log', 'export']);
    expect(out.trim().split('\n')).toHaveLength(3);
    const whole = temporaryFile('log.jsonl', out);
    expect((await runCli(db, ['log', 'verify', '--file', whole])).out).toContain('intact: 3 entries');
    const changed = temporaryFile('log.jsonl', out.replace('case-accepted', 'case-declined'));
    expect(await runCli(db, ['log', 'verify', '--file', changed])).toMatchObject({ code: 1 });
    const strange = temporaryFile('log.jsonl', 'no entry\n');
    expect((await runCli(db, ['log', 'verify', '--file', strange])).err).toContain('Line 1');
  });
});

describe('log cuts and replay-cuts', () => {
  it('lists destroyed keys, and takes the list again', async () => {
    const { db } = testDatabase();
    await addPerson(db, 'ann');
    await db.user.delete({ where: { id: 'ann' } });
    const { out } = await runCli(db, ['log', 'cuts']);
    expect(out).toMatch(/^[0-9a-f]{32}\n$/);
    const replayed = await runCli(db, ['log', 'replay-cuts', temporaryFile('cuts.txt', out)]);
    expect(replayed.out).toBe('Cut again: 0 links. Deleted again: 0 accounts.\n');
    expect(await runCli(db, ['log', 'replay-cuts', temporaryFile('cuts.txt', 'nonsense\n')])).toMatchObject({ code: 1 });
  });
});
