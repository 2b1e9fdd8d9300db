import type { Prisma } from '../../prisma/generated/client';
import type { Db } from '../db';

/** Runs in a transaction: one of its own, or the one that is already open. */
export function inTransaction<T>(db: Db, run: (tx: Prisma.TransactionClient) => Promise<T>): Promise<T> {
  return '$transaction' in db ? db.$transaction(run, { timeout: 20_000, maxWait: 20_000 }) : run(db);
}
