import { beforeEach, describe, expect, it } from 'vitest';
import { forgetLimits } from '../../../server/accounts/limits';
import { findNameBehindReset } from '../../../server/accounts/reset-link';
import { testDatabase } from '../../setup/test-database';
import { visitor } from '../accounts/visitor';
import { runCli, spawnCli } from './run-cli';

const PASSWORD = 'solder and rosin at dusk';

beforeEach(forgetLimits);

describe('user add', () => {
  it('adds the first keeper, who can sign in', async () => {
    const { db } = testDatabase();
    expect(await runCli(db, ['user', 'add', 'Mira', '--role', 'keeper'], PASSWORD)).toMatchObject({
      code: 0,
      out: 'Added Mira, keeper.\n',
    });
    const mira = visitor(db);
    await mira.account.signIn({ name: 'mira', password: PASSWORD });
    expect(await mira.account.me()).toEqual({ name: 'Mira', role: 'keeper' });
  });

  it('reads the password from a pipe', async () => {
    const { db, url } = testDatabase();
    const run = await spawnCli(['user', 'add', 'Mira'], url, `${PASSWORD}\n`);
    expect(run).toMatchObject({ code: 0, out: 'Added Mira, contributor.\n' });
    expect(await visitor(db).account.signIn({ name: 'Mira', password: PASSWORD })).toEqual({ status: 'done' });
  });

  it.each([
    ['a bad name', ['Mi ra'], PASSWORD, 2, /^The name: Use letters/],
    ['a short password', ['Mira'], 'short', 1, /^The password: Use at least 10/],
    ['no password', ['Mira'], '', 1, /^The password: Use at least 10/],
    ['a common password', ['Mira'], '1234567890', 1, /tried first/],
    ['an unknown role', ['Mira', '--role', 'owner'], PASSWORD, 2, /Allowed choices are reader, contributor, moderator, keeper/],
  ])('refuses %s in one sentence and adds nothing', async (_, args, typed, code, sentence) => {
    const { db } = testDatabase();
    const run = await runCli(db, ['user', 'add', ...args], typed);
    expect(run.code).toBe(code);
    expect(run.err).toMatch(sentence);
    expect(await db.user.count()).toBe(0);
  });
});

describe('user list', () => {
  it('names accounts and roles, and no secret', async () => {
    const { db } = testDatabase();
    expect((await runCli(db, ['user', 'list'])).out).toContain('no accounts yet');
    await runCli(db, ['user', 'add', 'Mira'], PASSWORD);
    const { out } = await runCli(db, ['user', 'list', '--json']);
    expect(JSON.parse(out)).toEqual([{ name: 'Mira', role: 'contributor', since: expect.any(String) }]);
    expect((await runCli(db, ['user', 'list'])).out).toMatch(/Mira +contributor +\d{4}-\d\d-\d\d/);
  });
});

describe('user role', () => {
  it('gives a role, and refuses an unknown name or role', async () => {
    const { db } = testDatabase();
    await runCli(db, ['user', 'add', 'Mira'], PASSWORD);
    expect(await runCli(db, ['user', 'role', 'MIRA', 'moderator'])).toMatchObject({ code: 0, out: 'Mira is now moderator.\n' });
    expect(await runCli(db, ['user', 'role', 'nobody', 'moderator'])).toMatchObject({
      code: 1,
      err: expect.stringContaining('no account'),
    });
    expect(await runCli(db, ['user', 'role', 'Mira', 'owner'])).toMatchObject({ code: 2 });
  });
});

describe('user reset', () => {
  it('prints the link alone on standard output, and it works', async () => {
    const { db } = testDatabase();
    await runCli(db, ['user', 'add', 'Mira'], PASSWORD);
    const { code, out, err } = await runCli(db, ['user', 'reset', 'Mira']);
    expect(code).toBe(0);
    expect(out).toMatch(/^\/reset\/[A-Za-z0-9_-]{43}\n$/);
    expect(err).toContain('24 hours');
    // The command line of the tests lives on 2 January 2026.
    expect(await findNameBehindReset(db, out.trim().slice('/reset/'.length), new Date('2026-01-02T12:00:00Z'))).toBe('Mira');
  });
});
