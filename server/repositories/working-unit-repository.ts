import type { WorkingUnitRecord, WorkingUnitStatus } from '../../shared/schemas/case';
import { contentHash } from '../content-hash';
import type { Db } from '../db';
import { bulkInsert } from './bulk-insert';
import { getDevicePlace, readDevicePlaces } from './device-places';

const CHUNK = 200;

/** How many working units are published. */
export function countWorkingUnits(db: Db): Promise<number> {
  return db.workingUnit.count({ where: { status: 'accepted' } });
}

/** Published working units by board revision; boards without any are left out. */
export async function countWorkingUnitsByBoard(db: Db): Promise<Map<string, number>> {
  const rows = await db.workingUnit.groupBy({ by: ['boardSlug'], where: { status: 'accepted' }, _count: true });
  return new Map(rows.flatMap(({ boardSlug, _count }) => (boardSlug === null ? [] : [[boardSlug, _count] as const])));
}

/** Stores reading records of working units and returns how many were new (by id). Published at once unless told otherwise. */
export async function insertWorkingUnits(
  db: Db,
  units: readonly WorkingUnitRecord[],
  onProgress?: (done: number) => void,
  status: WorkingUnitStatus = 'accepted',
): Promise<number> {
  const places = await readDevicePlaces(db);
  const rows = await db.workingUnit.findMany({ select: { id: true, contentHash: true, occurrence: true } });
  const ids = new Set(rows.map((row) => row.id));
  const copies = new Map<string, number>();
  for (const row of rows) copies.set(row.contentHash, Math.max(copies.get(row.contentHash) ?? 0, row.occurrence + 1));
  const fresh = units.filter((unit) => !ids.has(unit.id));
  for (let start = 0; start < fresh.length; start += CHUNK) {
    const chunk = fresh.slice(start, start + CHUNK);
    await db.workingUnit.createMany({
      data: chunk.map(({ id, ...content }) => {
        const hash = contentHash(content);
        const occurrence = copies.get(hash) ?? 0;
        copies.set(hash, occurrence + 1);
        return { id, ...getDevicePlace(places, content.device), month: content.month, contentHash: hash, occurrence, status };
      }),
    });
    await bulkInsert(
      db,
      'WorkingReading',
      chunk.flatMap((unit) =>
        unit.readings.map(({ designator, pin, state, value, unit: unitOfValue }, position) => ({
          unitId: unit.id,
          position,
          designator,
          pin,
          state,
          value,
          unitOfValue,
        })),
      ),
    );
    onProgress?.(Math.min(start + CHUNK, fresh.length));
  }
  return fresh.length;
}

/** Every published working unit of one board revision, in order of id. */
export async function listWorkingUnitsOfBoard(db: Db, board: string): Promise<WorkingUnitRecord[]> {
  const units: WorkingUnitRecord[] = [];
  for (;;) {
    const page: WorkingUnitRecord[] = await listWorkingUnits(db, { board, after: units.at(-1)?.id ?? null });
    if (page.length === 0) return units;
    units.push(...page);
  }
}

/** Every published working unit, one at a time, read in pages. */
export async function* streamWorkingUnits(db: Db): AsyncGenerator<WorkingUnitRecord> {
  let after: string | null = null;
  for (;;) {
    const page: WorkingUnitRecord[] = await listWorkingUnits(db, { after });
    yield* page;
    const last = page.at(-1);
    if (!last) return;
    after = last.id;
  }
}

/** Published working units in order of id, after the one named; `take` of them (200 unless told). An empty list is the end. */
export async function listWorkingUnits(
  db: Db,
  { after, take = 200, board }: { after?: string | null; take?: number; board?: string } = {},
): Promise<WorkingUnitRecord[]> {
  const rows = await db.workingUnit.findMany({
    where: { status: 'accepted', ...(after ? { id: { gt: after } } : {}), ...(board ? { boardSlug: board } : {}) },
    orderBy: { id: 'asc' },
    take,
    select: unitSelect,
  });
  return rows.map(recordOf);
}

export const unitSelect = {
  id: true,
  modelSlug: true,
  boardSlug: true,
  month: true,
  readings: {
    orderBy: { position: 'asc' },
    select: { designator: true, pin: true, state: true, value: true, unitOfValue: true },
  },
} as const;

type StoredReading = { designator: string; pin: string; state: string | null; value: number | null; unitOfValue: string | null };
type StoredUnit = { id: string; modelSlug: string; boardSlug: string | null; month: string; readings: StoredReading[] };

/** A stored working unit as a record. */
export function recordOf(row: StoredUnit): WorkingUnitRecord {
  return {
    id: row.id,
    device: row.boardSlug ?? row.modelSlug,
    month: row.month,
    readings: row.readings.map(
      ({ unitOfValue, ...reading }) => ({ ...reading, unit: unitOfValue }) as WorkingUnitRecord['readings'][number],
    ),
  };
}
