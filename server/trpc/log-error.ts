import type { TRPCError } from '@trpc/server';
import { isFault } from './error-codes';
import { getLogger } from '../watching/logger';

/**
 * Logs what nobody foresaw; refusals and malformed input are the caller's to mend and are not logged. The input is
 * left out: it may hold what somebody typed about themselves.
 */
export function logError({ error, path }: { error: TRPCError; path?: string | undefined }): void {
  if (!isFault(error.code)) return;
  getLogger().error({ procedure: path ?? 'unknown', err: error.cause ?? error }, 'A procedure failed.');
}
