import { execFile } from 'node:child_process';
import { copyFileSync, rmSync } from 'node:fs';
import { promisify } from 'node:util';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { testDatabase } from '../../setup/test-database';
import { fullForm, posting } from '../submission/posting';

const run = promisify(execFile);
const CHILD = 'tests/server/review/accept-until-killed.ts';

/** Whether each thing that accepting does is there. */
function traces(file: string, id: string): Record<string, boolean> {
  const database = new Database(file);
  const has = (sql: string) => database.prepare(sql).get(id) !== undefined;
  const found = {
    status: has("SELECT 1 FROM CaseFile WHERE id = ? AND status = 'accepted'"),
    history: has("SELECT 1 FROM CaseStatusChange WHERE caseId = ? AND event = 'accept'"),
    revision: has('SELECT 1 FROM CaseRevision WHERE caseId = ?'),
    feed: has('SELECT 1 FROM CaseChange WHERE caseId = ?'),
    queue: !has('SELECT 1 FROM WaitingCase WHERE caseId = ?'),
    log: database.prepare("SELECT 1 FROM LogEntry WHERE kind = 'case-accepted'").get() !== undefined,
  };
  database.close();
  return found;
}

const allOf = (found: Record<string, boolean>) => new Set(Object.values(found));

describe('accepting a case', () => {
  it('is all done or not at all, before whichever statement the process is killed', { timeout: 900_000 }, async () => {
    const opened = testDatabase();
    const file = opened.url.slice('file:'.length);
    const { as, db } = await posting([], opened.db);
    await as('mod', 'moderator');
    const outcome = await (await as('one')).submission.submit({ draftId: null, document: fullForm() });
    const id = outcome.kind === 'submitted' ? outcome.id : '';
    await db.$disconnect();
    const accept = async (n: number) => {
      const copy = `${file}.${n}`;
      copyFileSync(file, copy);
      const died = await run('node', ['--import', 'tsx', CHILD, `file:${copy}`, id, String(n)]).catch((error: { signal: string }) => error);
      const found = traces(copy, id);
      for (const end of ['', '-wal', '-shm']) rmSync(`${copy}${end}`, { force: true });
      return { died, found };
    };
    const whole = await accept(0);
    const { writes, status } = JSON.parse('stdout' in whole.died ? whole.died.stdout : '{}') as { writes: number; status: string };
    expect(status).toBe('done');
    expect(allOf(whole.found)).toEqual(new Set([true]));
    // Status, history, revision, feed, queue, log and the end of the transaction at the least.
    expect(writes).toBeGreaterThanOrEqual(7);
    for (let n = 1; n <= writes; n += 2) {
      const pair = await Promise.all([n, n + 1].filter((at) => at <= writes).map(accept));
      for (const { died, found } of pair) {
        expect(died).toMatchObject({ signal: 'SIGKILL' });
        expect(allOf(found), JSON.stringify(found)).toEqual(new Set([false]));
      }
    }
  });
});
