import { Prisma } from '../../prisma/generated/client';
import type { CaseStatus } from '../../shared/schemas/case';
import type { QueueFilter } from '../../shared/schemas/review';
import type { Db } from '../db';

// Cross joins, because SQLite takes their tables in the order given: by itself it begins with all cases, or all published ones.

/** Nothing that this account has posted is published yet. Where nobody is linked to a case, nobody is new. */
const NEWCOMER = Prisma.sql`EXISTS (
  SELECT 1 FROM "PostedCase" AS "link" WHERE "link"."caseId" = "CaseFile"."id" AND NOT EXISTS (
    SELECT 1 FROM "PostedCase" AS "other" CROSS JOIN "CaseFile" AS "published"
    WHERE "other"."userId" = "link"."userId" AND "published"."id" = "other"."caseId" AND "published"."status" = 'accepted'))`;
const WITH_MARKS = Prisma.sql`EXISTS (SELECT 1 FROM "DetailMark" WHERE "DetailMark"."caseId" = "CaseFile"."id")`;
const WITH_WORDS = Prisma.sql`EXISTS (SELECT 1 FROM "ProposedWord" WHERE "ProposedWord"."caseId" = "CaseFile"."id")`;
const WAITING = Prisma.sql`"WaitingCase" CROSS JOIN "CaseFile"`;
const ITS_CASE = Prisma.sql`"CaseFile"."id" = "WaitingCase"."caseId"`;

/** A waiting case as the queue shows it, with who posted it and who looks at it. */
export type QueueRow = {
  caseId: string;
  since: Date;
  claimedBy: string | null;
  claimedUntil: Date | null;
  claimerName: string | null;
  modelSlug: string;
  boardSlug: string | null;
  status: CaseStatus;
  ownerId: string | null;
  /** Symptoms that were seen, and causes, in their order. */
  symptoms: string[];
  causes: string[];
  /** How many kept details and proposed words it has. */
  marks: number;
  words: number;
  newcomer: boolean;
};

/** Counts come as whole numbers of either kind, and lists as JSON. */
type StoredRow = Omit<QueueRow, 'symptoms' | 'causes' | 'marks' | 'words' | 'newcomer'> &
  Record<'symptoms' | 'causes', string> &
  Record<'marks' | 'words' | 'newcomer', number | bigint>;

export type QueuePage = { filter: QueueFilter; after: { since: Date; caseId: string } | null; take: number };

/** Waiting cases that pass the filter, in its order, after the place named (keyset); one statement. */
export async function listQueue(db: Db, { filter, after, take }: QueuePage): Promise<QueueRow[]> {
  const rows = await db.$queryRaw<StoredRow[]>`
    SELECT "WaitingCase"."caseId", "since", "claimedBy", "claimedUntil", "User"."name" AS "claimerName",
      "modelSlug", "boardSlug", "status", "PostedCase"."userId" AS "ownerId",
      (SELECT json_group_array("symptomSlug" ORDER BY "position") FROM "CaseSymptom"
        WHERE "CaseSymptom"."caseId" = "CaseFile"."id" AND "present") AS "symptoms",
      (SELECT json_group_array("causeSlug" ORDER BY "position") FROM "CaseCause"
        WHERE "CaseCause"."caseId" = "CaseFile"."id") AS "causes",
      (SELECT COUNT(*) FROM "DetailMark" WHERE "DetailMark"."caseId" = "CaseFile"."id") AS "marks",
      (SELECT COUNT(*) FROM "ProposedWord" WHERE "ProposedWord"."caseId" = "CaseFile"."id") AS "words",
      ${NEWCOMER} AS "newcomer"
    FROM ${WAITING}
    LEFT JOIN "User" ON "User"."id" = "WaitingCase"."claimedBy"
    LEFT JOIN "PostedCase" ON "PostedCase"."caseId" = "CaseFile"."id"
    WHERE ${ITS_CASE} AND ${passing(filter)} AND ${afterPlace(filter, after)}
    ORDER BY ${inOrder(filter)} LIMIT ${take}`;
  return rows.map(({ symptoms, causes, marks, words, newcomer, ...row }) => ({
    ...row,
    symptoms: JSON.parse(symptoms),
    causes: JSON.parse(causes),
    marks: Number(marks),
    words: Number(words),
    newcomer: Number(newcomer) === 1,
  }));
}

/** Whether the contributor of a case has nothing published yet. */
export async function isFromNewcomer(db: Db, caseId: string): Promise<boolean> {
  const rows = await db.$queryRaw<unknown[]>`SELECT 1 FROM "CaseFile" WHERE "id" = ${caseId} AND ${NEWCOMER}`;
  return rows.length > 0;
}

/** The first waiting case after the place named that nobody else looks at and that is not this moderator's own, or null. */
export async function findNextFree(
  db: Db,
  page: Omit<QueuePage, 'take'> & { userId: string; now: Date; not: string | null },
): Promise<string | null> {
  const { filter, after, userId, now, not } = page;
  const own = Prisma.sql`EXISTS (
    SELECT 1 FROM "PostedCase" WHERE "PostedCase"."caseId" = "CaseFile"."id" AND "PostedCase"."userId" = ${userId})`;
  const [row] = await db.$queryRaw<{ caseId: string }[]>`
    SELECT "WaitingCase"."caseId" FROM ${WAITING}
    WHERE ${ITS_CASE} AND ${passing(filter)} AND ${afterPlace(filter, after)} AND NOT ${own}
      AND ("claimedBy" IS NULL OR "claimedBy" = ${userId} OR "claimedUntil" <= ${now})
      AND "WaitingCase"."caseId" <> ${not ?? ''}
    ORDER BY ${inOrder(filter)} LIMIT 1`;
  return row?.caseId ?? null;
}

const COUNTED = ['waiting', 'marks', 'words', 'newcomer', 'lookedAt'] as const;

/** How many wait, of all kinds, and by model in order of its slug; one statement. */
export async function countQueue(db: Db, now: Date) {
  const rows = await db.$queryRaw<({ modelSlug: string } & Record<(typeof COUNTED)[number], number | bigint>)[]>`
    SELECT "modelSlug", COUNT(*) AS "waiting",
      COUNT(*) FILTER (WHERE ${WITH_MARKS}) AS "marks",
      COUNT(*) FILTER (WHERE ${WITH_WORDS}) AS "words",
      COUNT(*) FILTER (WHERE ${NEWCOMER}) AS "newcomer",
      COUNT(*) FILTER (WHERE "claimedUntil" > ${now}) AS "lookedAt"
    FROM ${WAITING} WHERE ${ITS_CASE} GROUP BY "modelSlug" ORDER BY "modelSlug"`;
  const total = (of: (typeof COUNTED)[number]) => rows.reduce((sum, row) => sum + Number(row[of]), 0);
  return {
    all: total('waiting'),
    marks: total('marks'),
    words: total('words'),
    newcomer: total('newcomer'),
    lookedAt: total('lookedAt'),
    byModel: new Map(rows.map((row) => [row.modelSlug, Number(row.waiting)])),
  };
}

/** Ids of the cases of a model that wait, but for the one named; `most` of them, the oldest first. */
export async function listWaitingOfModel(db: Db, modelSlug: string, { not, most }: { not: string; most: number }): Promise<string[]> {
  const rows = await db.$queryRaw<{ caseId: string }[]>`
    SELECT "WaitingCase"."caseId" FROM ${WAITING}
    WHERE ${ITS_CASE} AND "modelSlug" = ${modelSlug} AND "WaitingCase"."caseId" <> ${not}
    ORDER BY "since", "WaitingCase"."caseId" LIMIT ${most}`;
  return rows.map((row) => row.caseId);
}

function passing({ device, marks, newcomer, words }: QueueFilter): Prisma.Sql {
  return Prisma.join(
    [
      device === null ? Prisma.sql`TRUE` : Prisma.sql`("modelSlug" = ${device} OR "boardSlug" = ${device})`,
      ...(marks ? [WITH_MARKS] : []),
      ...(newcomer ? [NEWCOMER] : []),
      ...(words ? [WITH_WORDS] : []),
    ],
    ' AND ',
  );
}

function afterPlace({ order }: QueueFilter, after: QueuePage['after']): Prisma.Sql {
  if (after === null) return Prisma.sql`TRUE`;
  const beyond = Prisma.raw(order === 'oldest' ? '>' : '<');
  return Prisma.sql`("since", "WaitingCase"."caseId") ${beyond} (${after.since}, ${after.caseId})`;
}

function inOrder({ order }: QueueFilter): Prisma.Sql {
  const direction = order === 'oldest' ? 'ASC' : 'DESC';
  return Prisma.raw(`"since" ${direction}, "WaitingCase"."caseId" ${direction}`);
}
