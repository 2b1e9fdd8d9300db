import type { Db } from '../db';
import { getLogger } from '../watching/logger';
import type { Casebook } from './load-casebook';
import { writeSnapshot } from './model-snapshot';

/** Fewer cases than this are read from the database in no time. */
const LEAST_CASES = 1_000;
/** Changes after which the snapshot is written anew. */
const CHANGES = 500;

let writing = false;

/**
 * Writes the snapshot beside the database where there is none of use, or where much has changed since. A server does not
 * wait for it. That it cannot be written is said in the log and is no error.
 */
export async function keepSnapshotFresh(db: Db, casebook: Casebook): Promise<void> {
  const { model, changeSeq, snapshotSeq } = casebook;
  const isFresh = snapshotSeq !== null && changeSeq - snapshotSeq < CHANGES;
  if (writing || isFresh || model.entries.size < LEAST_CASES) return;
  writing = true;
  casebook.snapshotSeq = changeSeq;
  try {
    await writeSnapshot(db, { model, changeSeq });
  } catch (error) {
    getLogger().warn({ err: error }, 'The snapshot of the casebook could not be written; the next start takes longer.');
  } finally {
    writing = false;
  }
}
