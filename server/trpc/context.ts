import type { Actor } from '../../shared/domain/can/can';
import { findActor } from '../accounts/find-actor';
import { getCasebook } from '../casebook/current-casebook';
import type { Casebook } from '../casebook/load-casebook';
import { type Db, getDb } from '../db';
import { getEnv } from '../env';
import { photoFolderOf } from '../photos/photo-files';
import type { CaseSearch } from '../search/case-search';
import { getSearch, startSearch } from '../search/current-search';
import { startDetails } from '../services/submit-details';
import { type RequestFacts, requestFacts } from './request-facts';

/** What every procedure gets. The casebook is loaded by the first that asks for it. */
export type Context = {
  db: Db;
  casebook: () => Promise<Casebook>;
  /** Finds cases by words. Opened by the first that asks for it. */
  search: () => CaseSearch;
  /** The account that is signed in, with the role that it has now; null for nobody. */
  actor: Actor | null;
  request: RequestFacts;
  /** Absolute path of the folder that holds the files of photos. */
  photoFolder: string;
  /** Hands a cookie to the browser, as the text of a Set-Cookie header. */
  setCookie: (cookie: string) => void;
};

/**
 * The context of a request to this process.
 *
 * @param headers of the request.
 * @param setCookie where cookies for the answer go; without it they are dropped (a page that is only read sets none).
 */
export async function createContext(headers: Headers, setCookie: (cookie: string) => void = () => {}): Promise<Context> {
  const db = getDb();
  const env = getEnv();
  const request = requestFacts(headers, env);
  const photoFolder = photoFolderOf(env.databaseFile);
  startSearch(db);
  startDetails();
  const actor = await findActor(db, headers);
  return { db, casebook: () => getCasebook(db), search: () => getSearch(db), actor, request, photoFolder, setCookie };
}
