import { AppError } from '../../shared/errors';
import type { Db } from '../db';
import { deleteAccountRows, findAccount, isLastKeeper, listSessions } from '../repositories/account-repository';
import { deleteUnacceptedOf } from '../repositories/after-repository';
import { deleteUnpublishedOf } from '../repositories/submission-links';
import type { PhotoPlace } from '../services/photo-tidy';
import { freezeConcentration } from '../services/health/freeze-concentration';
import { inTransaction } from '../services/submit-transaction';
import { postedData } from '../services/submit-list';
import { benchData } from '../services/sync-bench';
import { ownWorkingUnits } from '../services/working-units';

/** Everything that the site holds about an account, for its owner. */
export async function accountData(place: PhotoPlace, userId: string) {
  const { db } = place;
  const account = await findAccount(db, userId);
  if (account === null) throw new AppError('sign-in-needed');
  return {
    account: { name: account.name, role: account.role, since: account.createdAt.toISOString() },
    password: 'kept only as a salted scrypt hash, which is left out here',
    sessions: (await listSessions(db, userId)).map(({ createdAt, expiresAt }) => ({
      from: createdAt.toISOString(),
      until: expiresAt.toISOString(),
    })),
    ...(await postedData(place, userId)),
    workingUnits: await ownWorkingUnits(db, userId),
    benchLogs: await benchData(db, userId),
  };
}

/**
 * Removes an account and what hangs on it: drafts, cases that are not published, reports that were not accepted. What is
 * published stays, without anything that says whose it was. Throws `last-keeper`.
 */
export async function deleteAccount(db: Db, userId: string): Promise<void> {
  await inTransaction(db, async (tx) => {
    if (await isLastKeeper(tx, userId)) throw new AppError('last-keeper');
    await freezeConcentration(tx, userId);
    await deleteUnpublishedOf(tx, userId);
    await deleteUnacceptedOf(tx, userId);
    await deleteAccountRows(tx, userId);
  });
}
