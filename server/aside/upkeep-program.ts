import { keepSnapshotFresh } from '../casebook/keep-snapshot-fresh';
import { loadCasebook } from '../casebook/load-casebook';
import { createDb, type Db } from '../db';
import { openLocalSearch } from '../search/open-search';
import type { UpkeepJob } from './upkeep-jobs';

const jobs: Record<UpkeepJob, (db: Db, databaseFile: string) => Promise<void>> = {
  snapshot: async (db) => keepSnapshotFresh(db, await loadCasebook(db)),
  'search-index': async (db, databaseFile) => {
    const search = openLocalSearch(db, databaseFile);
    await search.catchUp().finally(() => search.close());
  },
};

// A program of its own: `node .next/upkeep-program.mjs <job> <database file>`. It works through the database, the snapshot and the file
// of the full text, and ends with its job. Bundled after the pages are built.
const [job, databaseFile] = process.argv.slice(2) as [UpkeepJob, string];
// Whoever started it has ended: nobody needs the rest, and half of it does no harm.
process.once('disconnect', () => process.exit(1));
const db = createDb(`file:${databaseFile}`);
await jobs[job](db, databaseFile).finally(() => db.$disconnect());
process.exit(0);
