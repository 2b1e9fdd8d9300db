import type { LogRow } from '../../repositories/log-repository';
import { canonicalText, entryHash, NO_HASH } from './entry-hash';

/** Number and hash of an entry, noted down while it was the newest: what proves later that nothing up to it has changed. */
export type Checkpoint = { seq: number; hash: string };

/** `head` is the newest entry, null for an empty log. `fault` says what is wrong with the entry at `seq`, the first that breaks. */
export type Verification =
  | { intact: true; entries: number; head: Checkpoint | null }
  | { intact: false; seq: number; fault: string };

/**
 * Follows the chain from its first entry.
 *
 * A chain alone shows every change in its middle. It cannot show that its newest entries were taken off, nor that all of it
 * was computed anew by somebody who can write to the database: both show against a checkpoint that is kept elsewhere.
 *
 * @param entries in order of their numbers.
 * @param checkpoints that were noted down; each has to be met.
 */
export async function verifyLog(
  entries: AsyncIterable<LogRow> | Iterable<LogRow>,
  checkpoints: readonly Checkpoint[] = [],
): Promise<Verification> {
  const noted = new Map<number, string[]>();
  for (const { seq, hash } of checkpoints) noted.set(seq, [...(noted.get(seq) ?? []), hash]);
  let head: Checkpoint = { seq: 0, hash: NO_HASH };
  for await (const entry of entries) {
    const fault =
      faultOf(entry, head) ?? (noted.get(entry.seq) ?? []).map((hash) => againstCheckpoint(entry, hash)).find(Boolean);
    if (fault) return { intact: false, seq: entry.seq, fault };
    head = { seq: entry.seq, hash: entry.hash };
  }
  const missing = Math.min(...checkpoints.map(({ seq }) => seq).filter((seq) => seq > head.seq || seq < 1));
  if (Number.isFinite(missing)) {
    return {
      intact: false,
      seq: head.seq + 1,
      fault: `it is missing: a checkpoint names entry ${missing}, the log ends at ${head.seq}`,
    };
  }
  return { intact: true, entries: head.seq, head: head.seq === 0 ? null : head };
}

function faultOf(entry: LogRow, before: Checkpoint): string | null {
  if (entry.seq !== before.seq + 1) return `it follows entry ${before.seq}: what should stand between them is missing`;
  if (entry.prevHash !== before.hash) return 'it does not name the hash of the entry before it';
  if (entryHash(entry) !== entry.hash) return 'its hash is not that of what it says';
  return isCanonical(entry.detail) ? null : 'its detail is not canonical JSON';
}

const againstCheckpoint = (entry: LogRow, hash: string) =>
  entry.hash === hash ? null : 'it is not the entry that a checkpoint names: the log was written anew';

function isCanonical(text: string): boolean {
  try {
    return canonicalText(JSON.parse(text)) === text;
  } catch {
    return false;
  }
}
