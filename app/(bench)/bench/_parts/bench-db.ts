import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { BenchEntry, BenchUnit } from '../../../../shared/schemas/bench';

/** What goes with the logs: who writes here, and how far the server is known. */
export type BenchMeta = {
  /** Random name of this browser, in every revision that it writes. */
  writer: string;
  /** Account that the logs were sent to; null for none yet. */
  account: string | null;
  /** Where the server's answers ended. */
  since: number;
};

/** A record with whether the server has its newest revision. */
export type Kept<R> = R & { sent: boolean };

interface BenchSchema extends DBSchema {
  units: { key: string; value: Kept<BenchUnit> };
  entries: { key: string; value: Kept<BenchEntry> };
  /** Words and snapshots with the name of their contents, and the meta record. */
  data: { key: string; value: unknown };
}
export type BenchDb = IDBPDatabase<BenchSchema>;

const VERSION = 1;

/** This browser's bench: units, entries, and the data to answer without a network. */
export function openBench(): Promise<BenchDb> {
  return openDB<BenchSchema>('second-bench', VERSION, {
    upgrade: (db) => {
      db.createObjectStore('units', { keyPath: 'id' });
      db.createObjectStore('entries', { keyPath: 'id' });
      db.createObjectStore('data');
    },
  });
}

/** Everything that is written here, and the meta record, made at first use. */
export async function readBench(db: BenchDb, newId: () => string) {
  const [units, entries, stored] = await Promise.all([db.getAll('units'), db.getAll('entries'), db.get('data', 'meta')]);
  const meta = (stored as BenchMeta | undefined) ?? { writer: newId(), account: null, since: 0 };
  if (stored === undefined) await db.put('data', meta, 'meta');
  return { units, entries, meta };
}

/** Removes everything of the bench from this browser. */
export async function clearBench(db: BenchDb): Promise<void> {
  await Promise.all([db.clear('units'), db.clear('entries'), db.clear('data')]);
}
