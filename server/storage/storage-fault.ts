import type { ErrorCode } from '../../shared/errors';

/** What keeps the site from storing anything, as the refusal that says so. */
export type StorageFault = Extract<ErrorCode, 'disk-full' | 'disk-read-only'>;

/**
 * Codes by what they mean. SQLite: "Result and Error Codes" (sqlite.org/rescode.html); a write or sync that the system refuses
 * is SQLITE_IOERR_*, save for a full disk. The others are names of errno (POSIX.1-2017, <errno.h>).
 */
const FULL = /^(SQLITE_FULL|ENOSPC|EDQUOT)$/;
const READ_ONLY =
  /^(SQLITE_READONLY|SQLITE_CANTOPEN|SQLITE_IOERR_(WRITE|FSYNC|DIR_FSYNC|TRUNCATE|SHMOPEN|SHMSIZE|DELETE)|EROFS|EACCES|EPERM)/;
/** Of one error lies behind another, as many as this. */
const DEEPEST = 6;

/** Whether an error means that the disk is full or cannot be written, whatever library it came through; null for any other. */
export function storageFaultOf(error: unknown, depth = 0): StorageFault | null {
  if (typeof error !== 'object' || error === null || depth > DEEPEST) return null;
  for (const name of ['code', 'originalCode'] as const) {
    const code = (error as Record<string, unknown>)[name];
    if (typeof code !== 'string') continue;
    if (FULL.test(code)) return 'disk-full';
    if (READ_ONLY.test(code)) return 'disk-read-only';
  }
  const { cause, meta } = error as { cause?: unknown; meta?: { driverAdapterError?: unknown } };
  return storageFaultOf(cause, depth + 1) ?? storageFaultOf(meta?.driverAdapterError, depth + 1);
}
