import { createHash } from 'node:crypto';
import type { Db } from '../db';
import { saveAfterKey, takeAfterKey } from '../repositories/after-repository';

/** A key has a hundred random bits: a plain hash of it cannot be guessed backwards. */
const hashOf = (key: string) => createHash('sha256').update(key).digest('hex');

/**
 * Gives a case a new key, in place of the last one, and returns it in groups of four. It is shown once: only its hash is
 * kept.
 * @param key 20 characters of lower-case base 32 from the system's random source.
 */
export async function issueAfterKey(db: Db, caseId: string, key: string): Promise<string> {
  await saveAfterKey(db, caseId, hashOf(key));
  return key.replace(/(.{4})(?=.)/g, '$1-');
}

/** Uses up the key of a case. False where it is not this case's, or was used already. */
export function spendAfterKey(db: Db, caseId: string, key: string): Promise<boolean> {
  return takeAfterKey(db, caseId, hashOf(key));
}
