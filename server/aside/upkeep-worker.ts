import { parentPort, workerData } from 'node:worker_threads';
import { keepSnapshotFresh } from '../casebook/keep-snapshot-fresh';
import { loadCasebook } from '../casebook/load-casebook';
import { createDb, type Db } from '../db';
import { openLocalSearch } from '../search/open-search';
import { DONE, type UpkeepJob, type UpkeepOrder } from './upkeep-messages';

const jobs: Record<UpkeepJob, (db: Db, databaseFile: string) => Promise<void>> = {
  snapshot: async (db) => keepSnapshotFresh(db, await loadCasebook(db)),
  'search-index': async (db, databaseFile) => {
    const search = openLocalSearch(db, databaseFile);
    await search.catchUp().finally(() => search.close());
  },
};

// A thread of its own that works as another program would: through the database, the snapshot and the file of the full text. It
// ends with its job, and its memory with it. Bundled after the pages are built.
const { job, databaseFile } = workerData as UpkeepOrder;
const db = createDb(`file:${databaseFile}`);
await jobs[job](db, databaseFile).finally(() => db.$disconnect());
parentPort?.postMessage(DONE);
