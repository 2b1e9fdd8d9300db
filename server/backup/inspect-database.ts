import Database from 'better-sqlite3';
import type { BackupManifest } from './backup-manifest';

export type Inspection = Pick<BackupManifest, 'migration' | 'cases' | 'accepted' | 'log'> & {
  /** What SQLite finds wrong with the file; empty where it is sound. */
  faults: string[];
};

/** Most faults worth naming. */
const FAULTS_MOST = 10;

/**
 * Opens a database file for reading, has SQLite check all of it (pages, indexes, foreign keys), and counts what it
 * holds. Throws where the file is no database of this program.
 */
export function inspectDatabase(file: string): Inspection {
  const database = new Database(file, { readonly: true, fileMustExist: true });
  try {
    const integrity = database.pragma(`integrity_check(${FAULTS_MOST})`) as { integrity_check: string }[];
    const faults = integrity.map((row) => row.integrity_check).filter((text) => text !== 'ok');
    const orphans = (database.pragma('foreign_key_check') as { table: string }[]).slice(0, FAULTS_MOST);
    return {
      faults: [...faults, ...orphans.map(({ table }) => `A row of ${table} names another that is not there.`)],
      migration: pluck(database, 'SELECT max(migration_name) FROM _prisma_migrations WHERE finished_at IS NOT NULL') as
        | string
        | null,
      cases: pluck(database, 'SELECT count(*) FROM CaseFile') as number,
      accepted: pluck(database, "SELECT count(*) FROM CaseFile WHERE status = 'accepted'") as number,
      log: logHead(database),
    };
  } finally {
    database.close();
  }
}

function logHead(database: Database.Database): BackupManifest['log'] {
  const head = database.prepare('SELECT seq AS entries, hash FROM LogEntry ORDER BY seq DESC LIMIT 1').get();
  return (head as BackupManifest['log'] | undefined) ?? null;
}

function pluck(database: Database.Database, sql: string): unknown {
  return database.prepare(sql).pluck().get() ?? null;
}
