import { isAtLeast, type Role } from '../../shared/domain/can/role';
import { AppError } from '../../shared/errors';
import type { Db } from '../db';
import { deleteSessions, findAccount, setAccountRole } from '../repositories/account-repository';

/**
 * Gives an account a role. One that may do less from now on is signed out everywhere.
 * @throws AppError 'account-not-found'
 */
export async function setRole(db: Db, accountId: string, role: Role): Promise<void> {
  const account = await findAccount(db, accountId);
  if (account === null) throw new AppError('account-not-found');
  await setAccountRole(db, accountId, role);
  if (!isAtLeast(role, account.role)) await deleteSessions(db, accountId);
}
