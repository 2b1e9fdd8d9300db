import { type Db, getDb } from '../db';
import { getCasebook } from '../casebook/current-casebook';
import type { Casebook } from '../casebook/load-casebook';

/** What every procedure gets. The casebook is loaded by the first that asks for it. */
export type Context = { db: Db; casebook: () => Promise<Casebook> };

/** The context of a request to this process. */
export function createContext(): Context {
  const db = getDb();
  return { db, casebook: () => getCasebook(db) };
}
