import type { Revised } from '../../shared/domain/bench/merge-log';
import type { Db } from '../db';

/** A record of a bench log as it is stored: the whole of it as JSON, beside what it is merged and sent on by. */
export type StoredRecord = Revised & { document: string };
export type StoredEntry = StoredRecord & { unitId: string };
type Sequenced<R> = R & { seq: number };

const revision = { id: true, clock: true, by: true, document: true, seq: true } as const;

/** The stored revisions of the records named, by id. */
export async function findBenchRevisions(db: Db, ownerId: string, ids: { units: string[]; entries: string[] }) {
  const select = { id: true, clock: true, by: true } as const;
  const [units, entries] = await Promise.all([
    db.benchUnit.findMany({ where: { ownerId, id: { in: ids.units } }, select }),
    db.benchEntry.findMany({ where: { ownerId, id: { in: ids.entries } }, select }),
  ]);
  return { units: new Map(units.map((row) => [row.id, row])), entries: new Map(entries.map((row) => [row.id, row])) };
}

/** The highest position that an owner's records have; 0 where there are none. */
export async function findBenchSeq(db: Db, ownerId: string): Promise<number> {
  const where = { ownerId };
  const [units, entries] = await Promise.all([
    db.benchUnit.aggregate({ where, _max: { seq: true } }),
    db.benchEntry.aggregate({ where, _max: { seq: true } }),
  ]);
  return Math.max(units._max.seq ?? 0, entries._max.seq ?? 0);
}

/** How many records an owner has. */
export async function countBenchRecords(db: Db, ownerId: string): Promise<{ units: number; entries: number }> {
  const where = { ownerId };
  return { units: await db.benchUnit.count({ where }), entries: await db.benchEntry.count({ where }) };
}

/** Writes a unit in a new revision. */
export async function putBenchUnit(db: Db, ownerId: string, { id, ...data }: Sequenced<StoredRecord>): Promise<void> {
  const where = { ownerId_id: { ownerId, id } };
  await db.benchUnit.upsert({ where, create: { ownerId, id, ...data }, update: data, select: { id: true } });
}

/** Writes an entry in a new revision. */
export async function putBenchEntry(db: Db, ownerId: string, { id, ...data }: Sequenced<StoredEntry>): Promise<void> {
  const where = { ownerId_id: { ownerId, id } };
  await db.benchEntry.upsert({ where, create: { ownerId, id, ...data }, update: data, select: { id: true } });
}

/** An owner's records after a position, in order of it, at most `take` of each kind. */
export async function listBenchAfter(db: Db, ownerId: string, { since, take }: { since: number; take: number }) {
  const query = { where: { ownerId, seq: { gt: since } }, orderBy: { seq: 'asc' }, take } as const;
  const [units, entries] = await Promise.all([
    db.benchUnit.findMany({ ...query, select: revision }),
    db.benchEntry.findMany({ ...query, select: { ...revision, unitId: true } }),
  ]);
  return { units, entries };
}
