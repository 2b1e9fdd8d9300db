import { setImmediate as breath } from 'node:timers/promises';
import { catchUpCasebook } from '../casebook/current-casebook';
import type { Db } from '../db';
import { catchUpSearch } from '../search/current-search';

/**
 * Has everything in this process that follows the change feed catch up now, so that whoever changed what is published
 * sees the effect at once. Call it after the change is committed. Followers in other processes notice by themselves.
 */
export async function tellFollowers(db: Db): Promise<void> {
  // The change itself was work, too, and so is following it.
  await breath();
  await Promise.all([catchUpCasebook(db), catchUpSearch()]);
}
