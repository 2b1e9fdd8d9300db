import { beforeEach, describe, expect, it } from 'vitest';
import { addAccountWithRole } from '../../../server/accounts/add-account';
import { forgetLimits } from '../../../server/accounts/limits';
import { findNameBehindReset, makeResetToken, resetPassword } from '../../../server/accounts/reset-link';
import { findAccountByName } from '../../../server/repositories/account-repository';
import { testDatabase } from '../../setup/test-database';
import { visitor } from './visitor';

const OLD = { name: 'Mira', password: 'solder and rosin at dusk' };
const NEW = 'flux and braid at dawn';
const HOUR = 3_600_000;
const NOW = new Date('2026-03-01T10:00:00Z');
const later = (milliseconds: number) => new Date(NOW.getTime() + milliseconds);

beforeEach(forgetLimits);

async function withLink() {
  const { db } = testDatabase();
  await addAccountWithRole(db, { ...OLD, role: 'contributor' });
  const id = (await findAccountByName(db, 'Mira'))?.id ?? '';
  return { db, id, token: await makeResetToken(db, id, NOW) };
}

describe('a reset link', () => {
  it('sets a new password once, and ends every session', async () => {
    const { db, token } = await withLink();
    const before = visitor(db);
    await before.account.signIn(OLD);
    expect(await findNameBehindReset(db, token, NOW)).toBe('Mira');
    expect(await resetPassword(db, { token, password: NEW }, NOW)).toEqual({ status: 'done' });
    expect(await before.account.me()).toBeNull();
    expect(await visitor(db).account.signIn(OLD)).toMatchObject({ status: 'refused' });
    expect(await visitor(db).account.signIn({ ...OLD, password: NEW })).toEqual({ status: 'done' });
    const again = await resetPassword(db, { token, password: 'a third password' }, NOW);
    expect(again).toMatchObject({ status: 'refused', fields: { token: expect.stringContaining('used already') } });
    expect(await findNameBehindReset(db, token, NOW)).toBeNull();
  });

  it('works once for two who use it at the same moment', async () => {
    const { db, token } = await withLink();
    const outcomes = await Promise.all([NEW, `${NEW} two`].map((password) => resetPassword(db, { token, password }, NOW)));
    expect(outcomes.map((o) => o.status).sort()).toEqual(['done', 'refused']);
  });

  it('works for 24 hours', async () => {
    const { db, token } = await withLink();
    expect(await findNameBehindReset(db, token, later(24 * HOUR - 1))).toBe('Mira');
    expect(await findNameBehindReset(db, token, later(24 * HOUR))).toBeNull();
    expect(await resetPassword(db, { token, password: NEW }, later(24 * HOUR))).toMatchObject({ status: 'refused' });
    expect(await visitor(db).account.signIn(OLD)).toEqual({ status: 'done' });
  });

  it('is not spent by a password that is refused', async () => {
    const { db, token } = await withLink();
    expect(await resetPassword(db, { token, password: '1234567890' }, NOW)).toMatchObject({
      fields: { password: expect.any(String) },
    });
    expect(await resetPassword(db, { token, password: NEW }, NOW)).toEqual({ status: 'done' });
  });

  it('stops working when a new one is made', async () => {
    const { db, id, token } = await withLink();
    const second = await makeResetToken(db, id, NOW);
    expect(await findNameBehindReset(db, token, NOW)).toBeNull();
    expect(await findNameBehindReset(db, second, NOW)).toBe('Mira');
  });

  it('cannot be made from what the database holds', async () => {
    const { db, token } = await withLink();
    const rows = await db.verification.findMany();
    expect(rows).toHaveLength(1);
    expect(JSON.stringify(rows)).not.toContain(token);
    const hash = rows[0]?.identifier.split(':')[1] ?? '';
    expect(await findNameBehindReset(db, hash, NOW)).toBeNull();
  });

  it('is not found under a token of the wrong shape', async () => {
    const { db } = await withLink();
    expect(await visitor(db).account.behindReset({ token: '../../etc/passwd' })).toBeNull();
  });
});
