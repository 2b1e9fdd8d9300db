import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { setRole } from '../../../server/accounts/set-role';
import { addAccountWithRole } from '../../../server/accounts/add-account';
import { addDemoAccounts, DEMO_ACCOUNTS } from '../../../server/accounts/demo-accounts';
import { forgetLimits } from '../../../server/accounts/limits';
import { randomCaseId } from '../../../server/ids';
import { findAccountByName } from '../../../server/repositories/account-repository';
import { appendEvent } from '../../../server/repositories/event-log-repository';
import type { Role } from '../../../shared/domain/can/role';
import { testDatabase } from '../../setup/test-database';
import { visitor } from './visitor';

const PASSWORD = 'solder and rosin at dusk';
const MIRA = { name: 'Mira', password: PASSWORD };

beforeEach(forgetLimits);
afterEach(() => {
  vi.useRealTimers();
});

async function withAccount(role: Role = 'contributor') {
  const { db } = testDatabase();
  await addAccountWithRole(db, { ...MIRA, role });
  const account = await findAccountByName(db, MIRA.name);
  if (account === null) throw new Error('no account');
  return { db, id: account.id };
}

describe('signUp', () => {
  it('signs in whoever signs up, as a contributor', async () => {
    const { db } = testDatabase();
    const mira = visitor(db);
    expect(await mira.account.me()).toBeNull();
    expect(await mira.account.signUp(MIRA)).toEqual({ status: 'done' });
    expect(await mira.account.me()).toEqual({ name: 'Mira', role: 'contributor' });
  });

  it('stores no mail address, network address, browser or readable password', async () => {
    const { db } = testDatabase();
    await visitor(db, { address: '198.51.100.23' }).account.signUp(MIRA);
    const everything = JSON.stringify([await db.user.findMany(), await db.session.findMany(), await db.credential.findMany()]);
    // .invalid: RFC 2606, section 2: a name that no mail can go to.
    expect(everything.match(/[^"]+@[^"]+/g)).toEqual([expect.stringMatching(/^[0-9a-f-]{36}@accounts\.invalid$/)]);
    expect(everything).not.toContain('198.51.100.23');
    expect(everything).not.toContain(PASSWORD);
    expect(await db.session.findFirst()).toMatchObject({ ipAddress: '', userAgent: '' });
  });

  it('refuses a name that somebody has, in whatever case', async () => {
    const { db } = await withAccount();
    const outcome = await visitor(db).account.signUp({ ...MIRA, name: 'mIRA' });
    expect(outcome).toMatchObject({ status: 'refused', fields: { name: expect.stringContaining('already') } });
  });

  it.each(['1234567890', 'QwertyUiop', 'password123', 'aaaaaaaaaaaa', 'Mira.mira.Mira'])(
    'refuses the easily guessed %s',
    async (password) => {
      const { db } = testDatabase();
      const outcome = await visitor(db).account.signUp({ name: 'Mira', password });
      expect(outcome).toMatchObject({ status: 'refused', fields: { password: expect.any(String) } });
      expect(await db.user.count()).toBe(0);
    },
  );

  it.each([
    ['a short password', { name: 'Mira', password: 'ninechars' }, 'password'],
    ['an endless password', { name: 'Mira', password: 'x'.repeat(129) }, 'password'],
    ['a short name', { name: 'Mi', password: PASSWORD }, 'name'],
    ['a name with a space', { name: 'Mi ra', password: PASSWORD }, 'name'],
    ['a name like a mail address', { name: 'mira@bench.example', password: PASSWORD }, 'name'],
  ])('says what is wrong with %s', async (_, input, field) => {
    const { db } = testDatabase();
    await expect(visitor(db).account.signUp(input)).rejects.toMatchObject({
      code: 'BAD_REQUEST',
      cause: { issues: [{ path: [field] }] },
    });
  });

  it('gives no role that was asked for', async () => {
    const { db } = testDatabase();
    const mira = visitor(db);
    await mira.account.signUp({ ...MIRA, role: 'keeper' } as typeof MIRA);
    expect(await mira.account.me()).toMatchObject({ role: 'contributor' });
  });

  it('takes twenty accounts an hour from one address', async () => {
    const { db } = testDatabase();
    const refused = { name: 'x'.repeat(5), password: '1234567890' };
    for (let i = 0; i < 20; i += 1) await visitor(db).account.signUp(refused);
    await expect(visitor(db).account.signUp(MIRA)).rejects.toMatchObject({ code: 'TOO_MANY_REQUESTS' });
    expect(await visitor(db, { address: '192.0.2.8' }).account.signUp(MIRA)).toEqual({ status: 'done' });
  });
});

describe('signIn', () => {
  it('lets in by the name in any case', async () => {
    const { db } = await withAccount();
    const mira = visitor(db);
    expect(await mira.account.signIn({ name: ' MIRA ', password: PASSWORD })).toEqual({ status: 'done' });
    expect(await mira.account.me()).toMatchObject({ name: 'Mira' });
  });

  it('says the same of a wrong password, an unknown name and an impossible one', async () => {
    const { db } = await withAccount();
    const tries = ['Mira', 'nobody', 'no body'].map((name) => visitor(db).account.signIn({ name, password: 'wrong' }));
    const [first, ...others] = await Promise.all(tries);
    expect(first).toMatchObject({ status: 'refused', fields: { password: expect.any(String) } });
    expect(others).toEqual([first, first]);
    expect(await db.session.count()).toBe(0);
  });

  it('keeps the cookie from scripts and other sites, and over TLS from plain connections', async () => {
    const { db } = await withAccount();
    const plain = visitor(db);
    await plain.account.signIn(MIRA);
    expect(plain.handed).toHaveLength(1);
    expect(plain.handed[0]).toMatch(/^second-bench\.session_token=.+; HttpOnly/);
    expect(plain.handed[0]).toMatch(/SameSite=Lax/i);
    expect(plain.handed[0]).not.toMatch(/Secure/);
    const tls = visitor(db, { isSecure: true });
    await tls.account.signIn(MIRA);
    expect(tls.handed[0]).toMatch(/; Secure$/);
  });

  it('stops ten wrong guesses from one address, and lets the owner in from another', async () => {
    const { db } = await withAccount();
    const guesser = visitor(db, { address: '198.51.100.1' });
    for (let i = 0; i < 10; i += 1) await guesser.account.signIn({ name: 'Mira', password: `guess ${i}` });
    await expect(guesser.account.signIn(MIRA)).rejects.toMatchObject({
      code: 'TOO_MANY_REQUESTS',
      message: 'Too many tries. Try again in 15 minutes.',
    });
    expect(await visitor(db).account.signIn(MIRA)).toEqual({ status: 'done' });
  });

  it('stops guesses from many addresses at one account', async () => {
    const { db } = await withAccount();
    const guess = (i: number) => visitor(db, { address: `198.51.100.${i}` }).account.signIn({ name: 'Mira', password: 'guess' });
    for (let i = 0; i < 60; i += 1) await guess(i);
    await expect(guess(61)).rejects.toMatchObject({ code: 'TOO_MANY_REQUESTS' });
  });

  it('takes no cookie that somebody signed without the key', async () => {
    const { db } = await withAccount();
    const mira = visitor(db);
    await mira.account.signIn(MIRA);
    const [name, value] = [...mira.jar][0] ?? ['', ''];
    const forger = visitor(db);
    forger.jar.set(name, `${value.split('.')[0]}.AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA%3D`);
    expect(await forger.account.me()).toBeNull();
    forger.jar.set(name, value);
    expect(await forger.account.me()).toMatchObject({ name: 'Mira' });
  });

  it('lasts 30 days', async () => {
    const { db } = await withAccount();
    const mira = visitor(db);
    await mira.account.signIn(MIRA);
    vi.useFakeTimers({ toFake: ['Date'], now: Date.now() + 29.9 * 86_400_000 });
    expect(await mira.account.me()).not.toBeNull();
    vi.setSystemTime(Date.now() + 0.2 * 86_400_000);
    expect(await mira.account.me()).toBeNull();
  });
});

describe('signOut', () => {
  it('ends this session alone, also for a cookie that was copied', async () => {
    const { db } = await withAccount();
    const [bench, phone, copy] = [visitor(db), visitor(db), visitor(db)];
    await bench.account.signIn(MIRA);
    await phone.account.signIn(MIRA);
    for (const [name, value] of bench.jar) copy.jar.set(name, value);
    await bench.account.signOut();
    expect(bench.jar.size).toBe(0);
    expect(await copy.account.me()).toBeNull();
    expect(await phone.account.me()).not.toBeNull();
    await phone.account.signOutEverywhere();
    expect(await db.session.count()).toBe(0);
  });
});

describe('changePassword', () => {
  it('asks for the old one, ends the other sessions and keeps this one', async () => {
    const { db } = await withAccount();
    const [bench, phone] = [visitor(db), visitor(db)];
    await bench.account.signIn(MIRA);
    await phone.account.signIn(MIRA);
    const password = 'another long evening';
    expect(await bench.account.changePassword({ current: 'wrong', password })).toMatchObject({
      fields: { current: expect.any(String) },
    });
    expect(await phone.account.me()).not.toBeNull();
    expect(await bench.account.changePassword({ current: PASSWORD, password })).toEqual({ status: 'done' });
    expect(await bench.account.me()).not.toBeNull();
    expect(await phone.account.me()).toBeNull();
    expect(await visitor(db).account.signIn(MIRA)).toMatchObject({ status: 'refused' });
    expect(await visitor(db).account.signIn({ name: 'Mira', password })).toEqual({ status: 'done' });
  });
});

describe('setRole', () => {
  it('signs out whoever may do less from now on, and changes nothing else', async () => {
    const { db, id } = await withAccount('moderator');
    await addAccountWithRole(db, { name: 'keeper', password: PASSWORD, role: 'keeper' });
    const [mira, keeper] = [visitor(db), visitor(db)];
    await mira.account.signIn(MIRA);
    await keeper.account.signIn({ name: 'keeper', password: PASSWORD });
    await keeper.account.setRole({ accountId: id, role: 'keeper' });
    expect(await mira.account.me()).toMatchObject({ role: 'keeper' });
    await keeper.account.setRole({ accountId: id, role: 'reader' });
    expect(await mira.account.me()).toBeNull();
    expect(await keeper.account.me()).toMatchObject({ role: 'keeper' });
  });

  it('is refused to a keeper on their own account', async () => {
    const { db, id } = await withAccount('keeper');
    const keeper = visitor(db);
    await keeper.account.signIn(MIRA);
    await expect(keeper.account.setRole({ accountId: id, role: 'reader' })).rejects.toMatchObject({ code: 'FORBIDDEN' });
  });
});

describe('the last keeper', () => {
  it('can neither be demoted nor delete the account, until there is another', async () => {
    const { db, id } = await withAccount('keeper');
    const keeper = visitor(db);
    await keeper.account.signIn(MIRA);
    const demote = () => setRole(db, id, 'moderator', { by: null, now: new Date() });
    await expect(demote()).rejects.toMatchObject({ code: 'last-keeper' });
    await expect(keeper.account.delete({ password: PASSWORD })).rejects.toMatchObject({ code: 'CONFLICT' });
    expect(await keeper.account.me()).toMatchObject({ role: 'keeper' });
    await addAccountWithRole(db, { name: 'second', password: PASSWORD, role: 'keeper' });
    await demote();
    expect(await keeper.account.me()).toBeNull();
  });
});

describe('endSessions', () => {
  it('signs somebody out everywhere, and is for keepers', async () => {
    const { db, id } = await withAccount();
    await addAccountWithRole(db, { name: 'keeper', password: PASSWORD, role: 'keeper' });
    const [mira, keeper] = [visitor(db), visitor(db)];
    await mira.account.signIn(MIRA);
    await keeper.account.signIn({ name: 'keeper', password: PASSWORD });
    await expect(mira.account.endSessions({ accountId: id })).rejects.toMatchObject({ code: 'FORBIDDEN' });
    await keeper.account.endSessions({ accountId: id });
    expect(await mira.account.me()).toBeNull();
    await expect(keeper.account.endSessions({ accountId: 'nobody' })).rejects.toMatchObject({ code: 'NOT_FOUND' });
  });
});

describe('delete', () => {
  it('asks for the password, and leaves nothing of the account', async () => {
    const { db } = await withAccount();
    const mira = visitor(db);
    await mira.account.signIn(MIRA);
    expect(await mira.account.delete({ password: 'wrong' })).toMatchObject({ status: 'refused' });
    expect(await db.user.count()).toBe(1);
    expect(await mira.account.delete({ password: PASSWORD })).toEqual({ status: 'done' });
    expect(await Promise.all([db.user.count(), db.session.count(), db.credential.count()])).toEqual([0, 0, 0]);
    expect(mira.jar.size).toBe(0);
  });
});

describe('download', () => {
  it('gives name, role, days and sessions, and no secret', async () => {
    const { db } = await withAccount();
    const mira = visitor(db);
    await mira.account.signIn(MIRA);
    const data = await mira.account.download();
    expect(data).toMatchObject({ account: { name: 'Mira', role: 'contributor' }, sessions: [{ from: expect.any(String) }] });
    const { token } = (await db.session.findFirst()) ?? { token: '' };
    expect(JSON.stringify(data)).not.toContain(token);
  });
});

describe('demoAccounts', () => {
  it('are told in the demo alone, and let in', async () => {
    const { db } = testDatabase();
    expect(await visitor(db).account.demoAccounts()).toEqual([]);
    await appendEvent(db, { id: randomCaseId(), at: new Date(), kind: 'seed', actor: 'seed', detail: 'test' });
    expect(await addDemoAccounts(db)).toBe(DEMO_ACCOUNTS.length);
    expect(await addDemoAccounts(db)).toBe(0);
    for (const { name, password, role } of await visitor(db).account.demoAccounts()) {
      const person = visitor(db);
      await person.account.signIn({ name, password });
      expect(await person.account.me()).toEqual({ name, role });
    }
  });
});
