import { rmSync } from 'node:fs';
import Database from 'better-sqlite3';
import { SEARCH_FIELDS } from '../../../shared/domain/search/search-document';
import { TOKENIZER } from './mark-page';

/**
 * How long a statement waits for another program's write, in milliseconds. The wait blocks the whole process, and making the
 * index anew holds the lock for long: whoever writes tries again instead.
 */
const BUSY_MS = 200;

/** Changes with the tables below: a file of another version is made anew. */
const TABLES_VERSION = 2;

/**
 * The tables of the index. A case takes two rows of the full text: its own, with an even number, and an empty one after
 * it. SQLite's BM25 gives a word that stands in half of the rows or more practically no weight; with as many empty
 * rows as cases no word of any case stands in more than half, so that "screen" still counts where most cases have one.
 */
const TABLES = `
  CREATE VIRTUAL TABLE case_text USING fts5(${SEARCH_FIELDS.join(', ')}, ${TOKENIZER});
  CREATE TABLE case_doc (
    doc INTEGER PRIMARY KEY, id TEXT NOT NULL UNIQUE, month TEXT NOT NULL, year TEXT NOT NULL, category TEXT NOT NULL,
    outcome TEXT NOT NULL, proof TEXT NOT NULL, photos TEXT NOT NULL
  );
  CREATE INDEX case_doc_month ON case_doc (month, id);
  -- Values of which a case has several: symptom, cause, device (model and board).
  CREATE TABLE case_tag (doc INTEGER NOT NULL, name TEXT NOT NULL, value TEXT NOT NULL, PRIMARY KEY (doc, name, value)) WITHOUT ROWID;
  CREATE INDEX case_tag_value ON case_tag (name, value, doc);
  -- Numbers of cases that were taken out, in the order in which they went.
  CREATE TABLE case_gone (doc INTEGER NOT NULL);
  -- Every word as it is written, with the number of cases that have it: what slips are corrected to.
  CREATE TABLE word (word TEXT PRIMARY KEY, cases INTEGER NOT NULL) WITHOUT ROWID;
  CREATE TABLE state (name TEXT PRIMARY KEY, value TEXT NOT NULL) WITHOUT ROWID;
  PRAGMA user_version = ${TABLES_VERSION};
`;

/**
 * Opens the index file, making it where it is missing, of another version or damaged: it holds nothing that the
 * database does not.
 */
export function openIndexFile(path: string): Database.Database {
  try {
    return openOnce(path);
  } catch (error) {
    if (!isDamaged(error)) throw error;
    removeIndexFile(path);
    return openOnce(path);
  }
}

/** Removes an index and what SQLite keeps beside it. */
export function removeIndexFile(path: string): void {
  for (const end of ['', '-wal', '-shm']) rmSync(`${path}${end}`, { force: true });
}

function openOnce(path: string): Database.Database {
  const file = new Database(path);
  try {
    file.exec(`PRAGMA busy_timeout = ${BUSY_MS}; PRAGMA journal_mode = WAL; PRAGMA synchronous = NORMAL;`);
    // Looked at first without a lock: an index that is in order can be opened on a disk that is full or read-only, too.
    if (!hasTables(file)) file.transaction(() => makeTables(file)).immediate();
    return file;
  } catch (error) {
    file.close();
    throw error;
  }
}

const hasTables = (file: Database.Database) => file.pragma('user_version', { simple: true }) === TABLES_VERSION;

function makeTables(file: Database.Database): void {
  if (hasTables(file)) return;
  for (const table of ['case_text', 'case_doc', 'case_tag', 'case_gone', 'word', 'state']) file.exec(`DROP TABLE IF EXISTS ${table}`);
  file.exec(TABLES);
}

/** Another program writes the index at the moment. */
export function isBusy(error: unknown): boolean {
  return error instanceof Error && 'code' in error && String(error.code).startsWith('SQLITE_BUSY');
}

/** SQLite says that what it reads is no database, or not in order. */
export function isDamaged(error: unknown): boolean {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return code === 'SQLITE_NOTADB' || code.startsWith('SQLITE_CORRUPT');
}
