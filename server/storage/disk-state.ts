import { randomBytes } from 'node:crypto';
import { open, rm } from 'node:fs/promises';
import { type StorageFault, storageFaultOf } from './storage-fault';

/** Written and taken away again, to see whether there is room: as much as a few posts need. */
const PROBE_BYTES = 256 * 1024;
/** How long an answer is good for, in milliseconds: whoever asks often writes no more for it. */
const GOOD_FOR = 5_000;

let kept: { file: string; at: number; state: Promise<StorageFault | null> } | null = null;

/**
 * Whether the disk that a database stands on takes what is written, found out by writing something beside it.
 *
 * @returns what is wrong with it, or null where it can be written.
 */
export function diskState(databaseFile: string, now: () => number = Date.now): Promise<StorageFault | null> {
  if (kept === null || kept.file !== databaseFile || now() - kept.at >= GOOD_FOR) {
    kept = { file: databaseFile, at: now(), state: probeDisk(databaseFile) };
  }
  return kept.state;
}

/** The same at this moment, for whoever asks seldom. */
export async function probeDisk(databaseFile: string): Promise<StorageFault | null> {
  const file = `${databaseFile}-room-${process.pid}`;
  try {
    const handle = await open(file, 'w', 0o600);
    try {
      // Nothing that a file system could keep as a hole or in fewer bytes.
      await handle.writeFile(randomBytes(PROBE_BYTES));
      await handle.datasync();
    } finally {
      await handle.close();
    }
    return null;
  } catch (error) {
    return storageFaultOf(error) ?? 'disk-read-only';
  } finally {
    await rm(file, { force: true }).catch(() => {});
  }
}
