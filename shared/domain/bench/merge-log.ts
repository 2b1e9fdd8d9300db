/** What decides between two revisions of one record. */
export type Revised = { id: string; clock: number; by: string };

/** Whether `a` replaces `b`: the later logical clock wins, between equal clocks the greater name of the writer. */
export function isNewer(a: Revised, b: Revised): boolean {
  return a.clock > b.clock || (a.clock === b.clock && a.by > b.by);
}

/**
 * Both sides' records, each in its newest revision, in order of id. Deletions are revisions like any other, so nothing
 * is lost or comes back. The order of merging, and merging twice, change nothing.
 */
export function mergeRecords<R extends Revised>(mine: readonly R[], theirs: readonly R[]): R[] {
  const merged = new Map<string, R>();
  for (const record of [...mine, ...theirs]) {
    const known = merged.get(record.id);
    if (known === undefined || isNewer(record, known)) merged.set(record.id, record);
  }
  return [...merged.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
}

/** The clock for the next revision: past everything seen so far. */
export function nextClock(seen: readonly Revised[]): number {
  return seen.reduce((highest, { clock }) => Math.max(highest, clock), 0) + 1;
}
