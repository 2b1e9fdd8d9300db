import type { Db } from '../db';
import type { Env } from '../env';
import { type CaseSearch, type CaseSearchOptions, createCaseSearch } from './case-search';
import { createMeilisearchEngine } from './meilisearch';
import { createSqliteEngine } from './sqlite-fts';

/**
 * Opens the indexes that the settings name. The SQLite one stands beside the database. Whoever calls this closes it.
 * @param rebuildAside makes the SQLite index anew elsewhere; see `CaseSearchOptions`
 */
export function openSearch(
  db: Db,
  env: Pick<Env, 'databaseFile' | 'meilisearch'>,
  { rebuildAside }: Pick<CaseSearchOptions, 'rebuildAside'> = {},
): CaseSearch {
  return createCaseSearch({
    db,
    local: createSqliteEngine(`${env.databaseFile}-search`),
    remote: env.meilisearch === null ? null : createMeilisearchEngine(env.meilisearch),
    now: Date.now,
    onTrouble: (error) => console.warn('The search server does not answer; SQLite answers until it does.', error),
    ...(rebuildAside && { rebuildAside }),
  });
}

/** The SQLite index of a database alone. Whoever calls this closes it. */
export function openLocalSearch(db: Db, databaseFile: string): CaseSearch {
  return openSearch(db, { databaseFile, meilisearch: null });
}
