import { addRecord, createCounts } from './counts';
import type { CodedRecord, Layout } from './layout';

/** Counts of a list of records. */
export function countAll(layout: Layout, records: readonly CodedRecord[]) {
  const counts = createCounts(layout);
  for (const record of records) addRecord(counts, record);
  return counts;
}
