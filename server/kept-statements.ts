import type { SqlDriverAdapter } from '@prisma/driver-adapter-utils';
import type { Database, Statement } from 'better-sqlite3';

/** Statements kept; each takes some tens of kilobytes at most. The program has a few hundred. */
const MOST_KEPT = 400;
/** Longer ones are bulk writes and lists of values: they seldom come again alike. */
const LONGEST = 4_000;

/** What Prisma's adapter asks of a statement, once it has bound its values. */
type Bound = Pick<Statement, 'reader' | 'run' | 'columns'> & { raw: () => { all: () => unknown[] } };
type Prepared = { bind: (values: unknown[]) => Bound };
type Client = { prepare: (sql: string) => Prepared };

/**
 * Has Prisma's adapter prepare each statement once. By itself it prepares every statement every time, which takes longer
 * than running most of them: a whole case is read in half the time. SQLite prepares a kept statement anew by itself where
 * the schema has changed.
 *
 * @returns whether it does so now: the client that is changed is the adapter's own affair, and one that is built otherwise works
 * on as it is.
 */
export function keepStatements(adapter: SqlDriverAdapter): boolean {
  const inside = adapter as unknown as { client?: Database };
  const { client } = inside;
  if (typeof client?.prepare !== 'function') return false;
  const kept = new Map<string, Statement<[unknown[]]>>();
  const prepared = (sql: string): Statement<[unknown[]]> => {
    const known = kept.get(sql);
    const statement = known ?? client.prepare<[unknown[]]>(sql);
    if (sql.length > LONGEST) return statement;
    // A map lists its entries in the order in which they were put: the first is the one not asked for longest.
    if (known !== undefined) kept.delete(sql);
    kept.set(sql, statement);
    const [oldest] = kept.keys();
    if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest);
    return statement;
  };
  const keeping: Client = { prepare: (sql) => ({ bind: (values) => boundTo(prepared(sql), values) }) };
  inside.client = new Proxy(client, {
    get: (target, name) => {
      if (name === 'prepare') return keeping.prepare;
      const value: unknown = Reflect.get(target, name);
      return typeof value === 'function' ? value.bind(target) : value;
    },
  });
  return true;
}

/** A kept statement with values for this one time: bound for good, it could not be used again. */
function boundTo(statement: Statement<[unknown[]]>, values: unknown[]): Bound {
  return {
    reader: statement.reader,
    run: () => statement.run(values),
    columns: () => statement.columns(),
    raw: () => {
      const rows = statement.raw();
      return { all: () => rows.all(values) };
    },
  };
}
