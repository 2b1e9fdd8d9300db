import { isAtLeast, type Role } from '../../shared/domain/can/role';
import { AppError } from '../../shared/errors';
import type { Db } from '../db';
import { deleteSessions, findAccount, isLastKeeper, setAccountRole } from '../repositories/account-repository';
import { appendLog } from '../services/log/append-log';
import { inTransaction } from '../services/submit-transaction';

/** Who gives the role: a keeper's account, or null for whoever runs the machine. */
type RoleChange = { by: string | null; now: Date };

/**
 * Gives an account a role, and logs it. One that may do less from now on is signed out everywhere.
 * @throws AppError 'account-not-found', and 'last-keeper' where nobody would be left to keep the site
 */
export function setRole(db: Db, accountId: string, role: Role, { by, now }: RoleChange): Promise<void> {
  return inTransaction(db, async (tx) => {
    const account = await findAccount(tx, accountId);
    if (account === null) throw new AppError('account-not-found');
    if (account.role === role) return;
    if (role !== 'keeper' && (await isLastKeeper(tx, accountId))) throw new AppError('last-keeper');
    await setAccountRole(tx, accountId, role);
    if (!isAtLeast(role, account.role)) await deleteSessions(tx, accountId);
    const subject = { kind: 'account', id: accountId } as const;
    const detail = { from: account.role, to: role };
    await appendLog(tx, { at: now, kind: 'role-changed', actorId: by, subject, detail });
  });
}
