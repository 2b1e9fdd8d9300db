import type { Db } from '../db';

/** Since when each waiting case has waited. */
export async function listWaitingSince(db: Db): Promise<Date[]> {
  return (await db.waitingCase.findMany({ select: { since: true } })).map(({ since }) => since);
}

/** Moderators' decisions on submissions since a month (YYYY-MM), by month and event. */
export async function countDecisions(db: Db, since: string): Promise<{ month: string; event: string; count: number }[]> {
  const rows = await db.caseStatusChange.groupBy({
    by: ['month', 'event'],
    where: { month: { gte: since }, event: { in: ['accept', 'decline', 'request-changes'] } },
    _count: { caseId: true },
    orderBy: [{ month: 'asc' }, { event: 'asc' }],
  });
  return rows.map(({ _count, ...row }) => ({ ...row, count: _count.caseId }));
}

/** Whole days that submissions had waited when they were decided, as the log says, since a month. */
export async function listWaitedDays(db: Db, since: string): Promise<number[]> {
  const rows = await db.$queryRaw<{ days: number | bigint }[]>`
    SELECT json_extract("detail", '$.waitedDays') AS "days" FROM "LogEntry"
    WHERE "month" >= ${since} AND json_extract("detail", '$.waitedDays') IS NOT NULL`;
  return rows.map(({ days }) => Number(days));
}

/** How many accepted cases with a cause say that it was proved in each way. */
export async function countProofs(db: Db): Promise<Map<string, number>> {
  const rows = await db.caseFile.groupBy({
    by: ['proof'],
    where: { status: 'accepted', proof: { not: null } },
    _count: { id: true },
  });
  return new Map(rows.map(({ proof, _count }) => [proof ?? '', _count.id]));
}

/** A device's accepted cases, and those of them that the one contributor with the most is still linked to. */
export type DeviceEvidence = { slug: string; name: string; cases: number; most: number; frozenBin: number | null };

/** Every device with accepted cases, by name. */
export async function listDeviceEvidence(db: Db): Promise<DeviceEvidence[]> {
  const rows = await db.$queryRaw<{ slug: string; name: string; cases: bigint; most: bigint | null; frozenBin: bigint | null }[]>`
    SELECT m."slug", m."name", COUNT(c."id") AS "cases",
      (SELECT MAX(n) FROM (
        SELECT COUNT(*) AS n FROM "PostedCase" p JOIN "CaseFile" f ON f."id" = p."caseId"
        WHERE f."status" = 'accepted' AND f."modelSlug" = m."slug" GROUP BY p."userId")) AS "most",
      (SELECT z."bin" FROM "FrozenConcentration" z WHERE z."modelSlug" = m."slug") AS "frozenBin"
    FROM "DeviceModel" m JOIN "CaseFile" c ON c."modelSlug" = m."slug" AND c."status" = 'accepted'
    GROUP BY m."slug", m."name" ORDER BY m."name"`;
  return rows.map(({ slug, name, cases, most, frozenBin }) => ({
    slug,
    name,
    cases: Number(cases),
    most: Number(most ?? 0),
    frozenBin: frozenBin === null ? null : Number(frozenBin),
  }));
}

/** A contributor's accepted cases of each device, beside all of the device. */
export async function listOwnEvidence(db: Db, userId: string): Promise<{ slug: string; own: number; cases: number }[]> {
  const rows = await db.$queryRaw<{ slug: string; own: bigint; cases: bigint }[]>`
    SELECT f."modelSlug" AS "slug", COUNT(*) AS "own",
      (SELECT COUNT(*) FROM "CaseFile" a WHERE a."modelSlug" = f."modelSlug" AND a."status" = 'accepted') AS "cases"
    FROM "PostedCase" p JOIN "CaseFile" f ON f."id" = p."caseId"
    WHERE p."userId" = ${userId} AND f."status" = 'accepted' GROUP BY f."modelSlug"`;
  return rows.map(({ slug, own, cases }) => ({ slug, own: Number(own), cases: Number(cases) }));
}

/** Keeps the highest bin that a cut link leaves behind for a device. */
export async function freezeBin(db: Db, modelSlug: string, bin: number): Promise<void> {
  const there = await db.frozenConcentration.findUnique({ where: { modelSlug }, select: { bin: true } });
  if (there !== null && there.bin >= bin) return;
  await db.frozenConcentration.upsert({
    where: { modelSlug },
    create: { modelSlug, bin },
    update: { bin },
    select: { bin: true },
  });
}
