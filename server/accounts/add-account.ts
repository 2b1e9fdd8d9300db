import { randomUUID } from 'node:crypto';
import { isAPIError } from 'better-auth/api';
import type { Role } from '../../shared/domain/can/role';
import type { AccountOutcome, SignUp } from '../../shared/schemas/account';
import type { Db } from '../db';
import { deleteSessions, findAccountByName, setAccountRole } from '../repositories/account-repository';
import { authFor } from './auth';
import { whyEasilyGuessed } from './common-password';
import { findDatabaseFile } from '../repositories/database-file';
import { probeDisk } from '../storage/disk-state';
import { AppError } from '../../shared/errors';

export const TAKEN = 'Somebody has this name already. Choose another.';

type Added = AccountOutcome & { cookies: string[] };

/**
 * Adds an account, and signs it in.
 *
 * @param choice name and password of the right shape.
 * @returns what to change where it cannot be added; otherwise the cookies of the session. Nobody is asked for a mail
 *   address: the sign-in library gets a random one under .invalid (RFC 2606), which leads nowhere.
 */
export async function addAccount(db: Db, { name, password }: SignUp): Promise<Added> {
  const weak = whyEasilyGuessed(password, name);
  const taken = (await findAccountByName(db, name)) !== null;
  if (weak !== null || taken) {
    return {
      status: 'refused',
      fields: { ...(taken && { name: TAKEN }), ...(weak !== null && { password: weak }) },
      cookies: [],
    };
  }
  try {
    const { headers } = await authFor(db).api.signUpEmail({
      body: { name, username: name, password, email: `${randomUUID()}@accounts.invalid` },
      returnHeaders: true,
    });
    return { status: 'done', cookies: headers.getSetCookie() };
  } catch (error) {
    // Somebody else took the name since it was looked for.
    if (isAPIError(error) && (await findAccountByName(db, name)) !== null) {
      return { status: 'refused', fields: { name: TAKEN }, cookies: [] };
    }
    throw (await unstoredAccount(db, error)) ?? error;
  }
}

/** The library hides why an account could not be stored: whether it is the disk has to be looked at. */
async function unstoredAccount(db: Db, error: unknown): Promise<AppError | null> {
  const file = isAPIError(error) ? await findDatabaseFile(db) : null;
  const fault = file === null ? null : await probeDisk(file);
  return fault === null ? null : new AppError(fault, { cause: error });
}

/** Adds an account with a role and leaves no session behind: for whoever runs the machine, and for the demo. */
export async function addAccountWithRole(db: Db, account: SignUp & { role: Role }): Promise<AccountOutcome> {
  const { cookies: _, ...outcome } = await addAccount(db, account);
  if (outcome.status === 'refused') return outcome;
  const added = await findAccountByName(db, account.name);
  if (added === null) throw new Error('The account that was just added is not there.');
  await setAccountRole(db, added.id, account.role);
  await deleteSessions(db, added.id);
  return outcome;
}
