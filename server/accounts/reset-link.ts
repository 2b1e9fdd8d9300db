import { createHash, randomBytes, randomUUID } from 'node:crypto';
import type { AccountOutcome, ResetPassword } from '../../shared/schemas/account';
import type { Db } from '../db';
import { findAccount } from '../repositories/account-repository';
import { findResetLink, saveResetLink, takeResetLink } from '../repositories/account-reset-repository';
import { whyEasilyGuessed } from './common-password';
import { storeNewPassword } from './passwords';

const HOURS = 24;
export const SPENT = 'This link was used already, or it is older than a day. Ask a keeper for a new one.';

/** Of the secret only this is stored: whoever reads the database cannot use the link. */
const hashOf = (token: string) => createHash('sha256').update(token).digest('hex');

/**
 * Makes a link that sets a new password for an account, once, within 24 hours; an earlier link stops working.
 * @returns the secret part of the link: 256 random bits as 43 characters
 */
export async function makeResetToken(db: Db, userId: string, now: Date): Promise<string> {
  const token = randomBytes(32).toString('base64url');
  const expiresAt = new Date(now.getTime() + HOURS * 3_600_000);
  await saveResetLink(db, { id: randomUUID(), tokenHash: hashOf(token), userId, expiresAt, now });
  return token;
}

/** Name of the account that a link is for, or null where it does not work (any more). */
export async function findNameBehindReset(db: Db, token: string, now: Date): Promise<string | null> {
  const userId = await findResetLink(db, hashOf(token), now);
  return userId === null ? null : ((await findAccount(db, userId))?.name ?? null);
}

/** Sets a new password by a link and spends the link. A password that is refused does not spend it. */
export async function resetPassword(db: Db, { token, password }: ResetPassword, now: Date): Promise<AccountOutcome> {
  const tokenHash = hashOf(token);
  const userId = await findResetLink(db, tokenHash, now);
  const account = userId === null ? null : await findAccount(db, userId);
  if (account === null) return { status: 'refused', fields: { token: SPENT } };
  const weak = whyEasilyGuessed(password, account.name);
  if (weak !== null) return { status: 'refused', fields: { password: weak } };
  if (!(await takeResetLink(db, tokenHash))) return { status: 'refused', fields: { token: SPENT } };
  return storeNewPassword(db, account.id, { password, now });
}
