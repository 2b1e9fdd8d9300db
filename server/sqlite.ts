import Database from 'better-sqlite3';

/**
 * What every connection sets. WAL: readers do not wait for the writer. NORMAL is safe with WAL against a crash of
 * the program; after a power cut the last commits may be missing, but the file is whole. What is deleted is overwritten
 * with zeros: a destroyed key must not lie on in a free page.
 */
export const connectionPragmas = `
  PRAGMA busy_timeout = 5000;
  PRAGMA journal_mode = WAL;
  PRAGMA synchronous = NORMAL;
  PRAGMA foreign_keys = ON;
  PRAGMA secure_delete = ON;
`;

/**
 * Opens the database file directly, for bulk reads and full-text search, where Prisma's row mapping would cost too much.
 *
 * @param url `file:` address of an existing database.
 * @throws when the file is missing or is not a database. The caller closes it.
 */
export function openSqlite(url: string): Database.Database {
  const database = new Database(url.replace(/^file:/, ''), { fileMustExist: true });
  database.exec(connectionPragmas);
  return database;
}
