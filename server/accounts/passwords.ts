import type { AccountOutcome, ChangePassword } from '../../shared/schemas/account';
import { AppError } from '../../shared/errors';
import type { Db } from '../db';
import { deleteSessions, findAccount, findPasswordHash, setPasswordHash } from '../repositories/account-repository';
import { authFor } from './auth';
import { whyEasilyGuessed } from './common-password';
import { getLimits, requireTurn } from './limits';

const WRONG = 'This is not your password.';

/**
 * Whether a password is an account's. Wrong ones count towards the same limit as at signing in.
 * @throws AppError 'too-many-tries'
 */
export async function isPasswordOf(db: Db, userId: string, password: string): Promise<boolean> {
  const { wrongPassword } = getLimits();
  const name = (await findAccount(db, userId))?.name.toLowerCase() ?? userId;
  await requireTurn(wrongPassword, name);
  const hash = await findPasswordHash(db, userId);
  const context = await authFor(db).$context;
  const right = hash !== null && (await context.password.verify({ hash, password }));
  if (!right) await wrongPassword.penalty(name);
  return right;
}

/** Changes a password and signs the account out everywhere; the page signs it in again. */
export async function changePassword(
  db: Db,
  userId: string,
  { current, password }: ChangePassword,
  now: Date,
): Promise<AccountOutcome> {
  if (!(await isPasswordOf(db, userId, current))) return { status: 'refused', fields: { current: WRONG } };
  return storeNewPassword(db, userId, { password, now });
}

/** Stores a password that was proved to be its owner's choice, and ends every session of the account. */
export async function storeNewPassword(
  db: Db,
  userId: string,
  { password, now }: { password: string; now: Date },
): Promise<AccountOutcome> {
  const account = await findAccount(db, userId);
  if (account === null) throw new AppError('sign-in-needed');
  const weak = whyEasilyGuessed(password, account.name);
  if (weak !== null) return { status: 'refused', fields: { password: weak } };
  const context = await authFor(db).$context;
  await setPasswordHash(db, userId, await context.password.hash(password), now);
  await deleteSessions(db, userId);
  return { status: 'done' };
}
