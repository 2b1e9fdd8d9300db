import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3';
import type { SqlDriverAdapter, SqlDriverAdapterFactory, SqlQuery, Transaction } from '@prisma/driver-adapter-utils';
import { keepStatements } from './kept-statements';
import { connectionPragmas } from './sqlite';

/**
 * Prisma's SQLite adapter for one database file, with four things seen to:
 * - the pragmas are set on the connection;
 * - a transaction takes the write lock at its start, so that it waits for another program's write instead of
 *   failing half-way (SQLite refuses to turn a stale read transaction into a writing one);
 * - statements from outside wait while a transaction is open. There is one connection: without this, another
 *   request's write would land inside the transaction and be rolled back with it;
 * - a statement is prepared once, and kept (`kept-statements.ts`).
 *
 * A statement sent outside the transaction by the transaction's own callback therefore waits until the
 * transaction times out. Pass the transaction on, not the client.
 *
 * @param url `file:` address of an existing database.
 */
export function createSqliteAdapter(url: string): SqlDriverAdapterFactory {
  const factory = new PrismaBetterSqlite3({ url });
  return {
    provider: factory.provider,
    adapterName: factory.adapterName,
    connect: async () => {
      const adapter = await factory.connect();
      await adapter.executeScript(connectionPragmas);
      keepStatements(adapter);
      return oneAtATime(adapter);
    },
  };
}

function oneAtATime(inner: SqlDriverAdapter): SqlDriverAdapter {
  let lastTransaction: Promise<void> = Promise.resolve();
  const afterTransactions = async <T>(run: () => Promise<T>): Promise<T> => {
    let seen: Promise<void>;
    do {
      seen = lastTransaction;
      await seen;
    } while (seen !== lastTransaction);
    return run();
  };
  return {
    provider: inner.provider,
    adapterName: inner.adapterName,
    queryRaw: (query) => afterTransactions(() => inner.queryRaw(query)),
    executeRaw: (query) => afterTransactions(() => inner.executeRaw(query)),
    executeScript: (script) => afterTransactions(() => inner.executeScript(script)),
    startTransaction: async () => {
      const before = lastTransaction;
      let release = () => {};
      lastTransaction = new Promise((resolve) => {
        release = resolve;
      });
      await before;
      try {
        await inner.executeRaw(statement('BEGIN IMMEDIATE'));
      } catch (error) {
        release();
        throw error;
      }
      return transaction(inner, release);
    },
    dispose: () => inner.dispose(),
  };
}

/** A transaction on the shared connection. Prisma sends COMMIT and ROLLBACK itself and then tells us. */
function transaction(inner: SqlDriverAdapter, release: () => void): Transaction {
  const run = async (sql: string) => {
    await inner.executeRaw(statement(sql));
  };
  const end = async () => release();
  return {
    provider: inner.provider,
    adapterName: inner.adapterName,
    options: { usePhantomQuery: false },
    queryRaw: (query) => inner.queryRaw(query),
    executeRaw: (query) => inner.executeRaw(query),
    commit: end,
    rollback: end,
    createSavepoint: (name) => run(`SAVEPOINT ${name}`),
    rollbackToSavepoint: (name) => run(`ROLLBACK TO ${name}`),
    releaseSavepoint: (name) => run(`RELEASE SAVEPOINT ${name}`),
  };
}

function statement(sql: string): SqlQuery {
  return { sql, args: [], argTypes: [] };
}
