import type { Db } from '../db';
import { upkeepAside } from '../aside/upkeep-aside';
import { getEnv } from '../env';
import type { CaseSearch } from './case-search';
import { openSearch } from './open-search';

/** How often the indexes look for what other programs have changed, in milliseconds. */
const POLL_MS = 500;

/** The bundler may load this module several times in one process; the indexes are opened once. */
const kept = globalThis as typeof globalThis & { secondBenchSearch?: CaseSearch; secondBenchSearchFailed?: boolean };

/** Has the indexes follow the change feed from the first request on; where they cannot be opened, searches say so. */
export function startSearch(db: Db): void {
  if (kept.secondBenchSearch !== undefined || kept.secondBenchSearchFailed) return;
  try {
    getSearch(db);
  } catch (error) {
    kept.secondBenchSearchFailed = true;
    console.error('The search index cannot be opened; everything but the search goes on.', error);
  }
}

/** The process's one search. From the first call on it follows the change feed by itself. */
export function getSearch(db: Db): CaseSearch {
  if (kept.secondBenchSearch === undefined) {
    const search = openSearch(db, getEnv(), { rebuildAside: () => upkeepAside(db, 'search-index') });
    kept.secondBenchSearch = search;
    follow(search);
  }
  return kept.secondBenchSearch;
}

/** Has the indexes of this process take in at once what was changed; does nothing where nobody has searched yet. */
export async function catchUpSearch(): Promise<void> {
  await kept.secondBenchSearch?.catchUp();
}

function follow(search: CaseSearch): void {
  let isFailing = false;
  const look = async () => {
    try {
      await search.catchUp();
      isFailing = false;
    } catch (error) {
      if (!isFailing) console.error('The search index could not catch up with what is stored; it is tried again.', error);
      isFailing = true;
    }
    setTimeout(look, POLL_MS).unref();
  };
  void look();
}
