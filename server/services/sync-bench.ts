import { isNewer, type Revised } from '../../shared/domain/bench/merge-log';
import { AppError } from '../../shared/errors';
import { type BenchEntry, benchEntrySchema, type BenchSync, type BenchUnit, benchUnitSchema } from '../../shared/schemas/bench';
import type { Db } from '../db';
import {
  countBenchRecords,
  findBenchRevisions,
  findBenchSeq,
  listBenchAfter,
  putBenchEntry,
  putBenchUnit,
} from '../repositories/bench-repository';
import { inTransaction } from './submit-transaction';

/** Records sent back at once, of each kind. */
const PAGE = 500;
/** Units that an owner may keep, closed and deleted ones included; and entries over all of them. */
const MOST_UNITS = 500;
const MOST_ENTRIES = 20_000;

/** What an owner's other browsers have written since; `seq` is where to go on, `more` whether there is more to fetch. */
export type BenchAnswer = { units: BenchUnit[]; entries: BenchEntry[]; seq: number; more: boolean };

/**
 * Takes in what a browser wrote and answers with what it has not seen. Per record the newest revision stays, on both
 * sides alike; the same call again changes nothing. Throws `bench-full`.
 */
export function syncBench(db: Db, ownerId: string, input: BenchSync): Promise<BenchAnswer> {
  return inTransaction(db, async (tx) => {
    const known = await findBenchRevisions(tx, ownerId, {
      units: input.units.map((unit) => unit.id),
      entries: input.entries.map((entry) => entry.id),
    });
    const units = newest(input.units).filter((unit) => replaces(unit, known.units));
    const entries = newest(input.entries).filter((entry) => replaces(entry, known.entries));
    await requireRoom(tx, ownerId, {
      units: units.filter(({ id }) => !known.units.has(id)).length,
      entries: entries.filter(({ id }) => !known.entries.has(id)).length,
    });
    let seq = await findBenchSeq(tx, ownerId);
    for (const unit of units) await putBenchUnit(tx, ownerId, { ...stored(unit), seq: ++seq });
    for (const entry of entries) await putBenchEntry(tx, ownerId, { ...stored(entry), unitId: entry.unitId, seq: ++seq });
    return answer(tx, ownerId, input.since);
  });
}

const stored = ({ id, clock, by, ...rest }: BenchUnit | BenchEntry) => ({
  id,
  clock,
  by,
  document: JSON.stringify({ id, clock, by, ...rest }),
});

function replaces(record: Revised, known: ReadonlyMap<string, Revised>): boolean {
  const before = known.get(record.id);
  return before === undefined || isNewer(record, before);
}

/** One revision of each record, should a browser send several. */
function newest<R extends Revised>(records: readonly R[]): R[] {
  const kept = new Map<string, R>();
  for (const record of records) if (replaces(record, kept)) kept.set(record.id, record);
  return [...kept.values()];
}

async function requireRoom(db: Db, ownerId: string, added: { units: number; entries: number }): Promise<void> {
  if (added.units + added.entries === 0) return;
  const { units, entries } = await countBenchRecords(db, ownerId);
  if (units + added.units > MOST_UNITS || entries + added.entries > MOST_ENTRIES) throw new AppError('bench-full');
}

async function answer(db: Db, ownerId: string, since: number): Promise<BenchAnswer> {
  const rows = await listBenchAfter(db, ownerId, { since, take: PAGE });
  const more = rows.units.length === PAGE || rows.entries.length === PAGE;
  // Where one list was cut, what lies behind its end in the other is left for the next time.
  const ends = [rows.units, rows.entries].filter((list) => list.length === PAGE).map((list) => list.at(-1)?.seq as number);
  const seq = more ? Math.min(...ends) : Math.max(since, ...[...rows.units, ...rows.entries].map((row) => row.seq));
  const within = ({ seq: at }: { seq: number }) => at <= seq;
  return {
    units: rows.units.filter(within).map((row) => benchUnitSchema.parse(JSON.parse(row.document))),
    entries: rows.entries.filter(within).map((row) => benchEntrySchema.parse(JSON.parse(row.document))),
    seq,
    more,
  };
}

/** Everything that the site holds of an account's bench logs. */
export async function benchData(db: Db, ownerId: string): Promise<{ units: unknown[]; entries: unknown[] }> {
  const rows = await listBenchAfter(db, ownerId, { since: 0, take: MOST_ENTRIES });
  const parse = ({ document }: { document: string }) => JSON.parse(document) as unknown;
  return { units: rows.units.map(parse), entries: rows.entries.map(parse) };
}

