import { type Prisma, PrismaClient } from '../prisma/generated/client';
import { getEnv } from './env';
import { createSqliteAdapter } from './sqlite-adapter';

/** The client, or a transaction of it: what a repository function takes first. */
export type Db = PrismaClient | Prisma.TransactionClient;

/**
 * Opens a Prisma client on one SQLite file: WAL, foreign keys enforced, waits up to 5 s for another writer.
 * The connection is made at the first query.
 *
 * @param url `file:` address of a migrated database.
 * @returns a client; call `$disconnect()` when done.
 */
export function createDb(url: string): PrismaClient {
  return new PrismaClient({ adapter: createSqliteAdapter(url) });
}

/** In development the modules are loaded anew after every edit; the connection must not be. */
const kept = globalThis as typeof globalThis & { secondBenchDb?: PrismaClient };

/** The process's one client, on the database that DATABASE_URL names. */
export function getDb(): PrismaClient {
  kept.secondBenchDb ??= createDb(getEnv().databaseUrl);
  return kept.secondBenchDb;
}
