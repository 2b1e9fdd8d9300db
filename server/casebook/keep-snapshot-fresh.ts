import type { Db } from '../db';
import { getLogger } from '../watching/logger';
import type { Casebook } from './load-casebook';
import { LEAST_CASES, writeSnapshot } from './model-snapshot';

/** Changes after which the snapshot is written anew. */
const CHANGES = 500;

let writing = false;

/**
 * Writes the snapshot beside the database where there is none of use, or where much has changed since. A server does not
 * wait for it. That it cannot be written is said in the log and is no error.
 * @param renewAside writes it elsewhere, of the snapshot before and what is stored since; false where that could not be done
 */
export async function keepSnapshotFresh(db: Db, casebook: Casebook, renewAside: () => Promise<boolean> = async () => false): Promise<void> {
  const { model, changeSeq, snapshotSeq } = casebook;
  const isFresh = snapshotSeq !== null && changeSeq - snapshotSeq < CHANGES;
  if (writing || isFresh || model.entries.size < LEAST_CASES) return;
  writing = true;
  casebook.snapshotSeq = changeSeq;
  try {
    // Without a snapshot every case would be read from the database there: copying what is counted here is quicker.
    if (snapshotSeq !== null && (await renewAside())) return;
    await writeSnapshot(db, { model, changeSeq: casebook.changeSeq });
  } catch (error) {
    getLogger().warn({ err: error }, 'The snapshot of the casebook could not be written; the next start takes longer.');
  } finally {
    writing = false;
  }
}
