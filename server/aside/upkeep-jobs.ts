/**
 * What the program for upkeep does: `snapshot` writes the counted casebook beside the database anew where it is old, damaged or of
 * another vocabulary; `search-index` brings the full text up to what is stored, anew where it has to be.
 */
export type UpkeepJob = 'snapshot' | 'search-index';
