/**
 * What the thread for upkeep does: `snapshot` writes the counted casebook beside the database anew where it is old, damaged or of
 * another vocabulary; `search-index` brings the full text up to what is stored, anew where it has to be.
 */
export type UpkeepJob = 'snapshot' | 'search-index';

/** What the thread is started with. It says `DONE` once the job is done, and ends. */
export type UpkeepOrder = { job: UpkeepJob; databaseFile: string };

export const DONE = 'done';
