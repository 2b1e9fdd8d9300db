import type { Db } from '../../db';
import { deleteAccountRows } from '../../repositories/account-repository';
import { deleteUnacceptedOf, forgetReporter } from '../../repositories/after-repository';
import { findReturnedKeys, insertDestroyedKeys } from '../../repositories/log-key-repository';
import { deleteLink, deleteUnpublishedOf } from '../../repositories/submission-links';
import { deleteDraftsOfCase } from '../../repositories/submission-drafts';
import { inTransaction } from '../submit-transaction';

/** How many links were cut again, and how many accounts deleted again. */
export type ReplayedCuts = { links: number; accounts: number };

/**
 * Repeats in a restored database what was cut or deleted since its backup was made: links between people and their cases, and
 * accounts, with the keys of both. Doing it twice changes nothing more.
 *
 * @param destroyed ids of destroyed keys, from the database that the backup replaces and from every list that was kept
 *   elsewhere (`listDestroyedKeys`). Ids that the backup does not know are remembered all the same.
 */
export function replayCuts(db: Db, destroyed: readonly string[]): Promise<ReplayedCuts> {
  return inTransaction(db, async (tx) => {
    await insertDestroyedKeys(tx, destroyed);
    const replayed = { links: 0, accounts: 0 };
    for (const { userId, caseId } of await findReturnedKeys(tx)) {
      if (caseId === null) {
        await deleteUnpublishedOf(tx, userId);
        await deleteUnacceptedOf(tx, userId);
        await deleteUnpublishedOf(tx, userId);
        await deleteUnacceptedOf(tx, userId);
        await deleteAccountRows(tx, userId);
        replayed.accounts++;
      } else if (await deleteLink(tx, caseId, userId)) {
        await deleteDraftsOfCase(tx, caseId);
        await forgetReporter(tx, caseId, userId);
        replayed.links++;
      }
    }
    return replayed;
  });
}
