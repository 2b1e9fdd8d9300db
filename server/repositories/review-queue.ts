import type { Prisma } from '../../prisma/generated/client';
import type { QueueFilter } from '../../shared/schemas/review';
import type { Db } from '../db';

/** Nothing that this account has posted is published yet. Where nobody is linked to a case, nobody is new. */
const NEWCOMER: Prisma.CaseFileWhereInput = {
  postedBy: { user: { posted: { none: { case: { status: 'accepted' } } } } },
};

const WITH_MARKS: Prisma.CaseFileWhereInput = { marks: { some: {} } };
const WITH_WORDS: Prisma.CaseFileWhereInput = { proposals: { some: {} } };

const select = {
  caseId: true,
  since: true,
  claimedBy: true,
  claimedUntil: true,
  claimer: { select: { name: true } },
  case: {
    select: {
      modelSlug: true,
      boardSlug: true,
      status: true,
      symptoms: { where: { present: true }, orderBy: { position: 'asc' }, select: { symptomSlug: true } },
      causes: { orderBy: { position: 'asc' }, select: { causeSlug: true } },
      postedBy: { select: { userId: true } },
      _count: { select: { marks: true, proposals: true } },
    },
  },
} satisfies Prisma.WaitingCaseSelect;

/** A waiting case as the queue shows it, with who posted it and who looks at it. */
export type QueueRow = Prisma.WaitingCaseGetPayload<{ select: typeof select }>;

export type QueuePage = { filter: QueueFilter; after: { since: Date; caseId: string } | null; take: number };

/** Waiting cases that pass the filter, in its order, after the place named (keyset). */
export function listQueue(db: Db, { filter, after, take }: QueuePage): Promise<QueueRow[]> {
  const direction = filter.order === 'oldest' ? 'asc' : 'desc';
  return db.waitingCase.findMany({
    where: { AND: [{ case: caseFilter(filter) }, afterPlace(filter, after)] },
    orderBy: [{ since: direction }, { caseId: direction }],
    take,
    select,
  });
}

/** Ids among these cases whose contributor has nothing published yet. */
export async function findNewcomers(db: Db, caseIds: readonly string[]): Promise<Set<string>> {
  const rows = await db.caseFile.findMany({ where: { id: { in: [...caseIds] }, ...NEWCOMER }, select: { id: true } });
  return new Set(rows.map((row) => row.id));
}

/** The first waiting case after the place named that nobody else looks at and that is not this moderator's own, or null. */
export async function findNextFree(
  db: Db,
  page: Omit<QueuePage, 'take'> & { userId: string; now: Date; not: string | null },
): Promise<string | null> {
  const { filter, after, userId, now, not } = page;
  const direction = filter.order === 'oldest' ? 'asc' : 'desc';
  const free = [{ claimedBy: null }, { claimedBy: userId }, { claimedUntil: { lte: now } }];
  const foreign: Prisma.CaseFileWhereInput = { OR: [{ postedBy: null }, { postedBy: { userId: { not: userId } } }] };
  const row = await db.waitingCase.findFirst({
    where: {
      AND: [
        { case: { AND: [caseFilter(filter), foreign] } },
        afterPlace(filter, after),
        { OR: free },
        ...(not === null ? [] : [{ caseId: { not } }]),
      ],
    },
    orderBy: [{ since: direction }, { caseId: direction }],
    select: { caseId: true },
  });
  return row?.caseId ?? null;
}

/** How many wait, of all kinds, and by model. */
export async function countQueue(db: Db, now: Date) {
  const waiting = (where: Prisma.CaseFileWhereInput) => db.waitingCase.count({ where: { case: where } });
  const byModel = await db.caseFile.groupBy({
    by: ['modelSlug'],
    where: { waiting: { isNot: null } },
    _count: { _all: true },
  });
  return {
    all: await db.waitingCase.count(),
    marks: await waiting(WITH_MARKS),
    words: await waiting(WITH_WORDS),
    newcomer: await waiting(NEWCOMER),
    lookedAt: await db.waitingCase.count({ where: { claimedUntil: { gt: now } } }),
    byModel: new Map(byModel.map((row) => [row.modelSlug, row._count._all])),
  };
}

/** Ids of the cases of a model that wait, but for the one named; `most` of them, the oldest first. */
export async function listWaitingOfModel(db: Db, modelSlug: string, { not, most }: { not: string; most: number }): Promise<string[]> {
  const rows = await db.waitingCase.findMany({
    where: { caseId: { not }, case: { modelSlug } },
    orderBy: [{ since: 'asc' }, { caseId: 'asc' }],
    take: most,
    select: { caseId: true },
  });
  return rows.map((row) => row.caseId);
}

function caseFilter({ device, marks, newcomer, words }: QueueFilter): Prisma.CaseFileWhereInput {
  return {
    AND: [
      device === null ? {} : { OR: [{ modelSlug: device }, { boardSlug: device }] },
      marks ? WITH_MARKS : {},
      newcomer ? NEWCOMER : {},
      words ? WITH_WORDS : {},
    ],
  };
}

function afterPlace({ order }: QueueFilter, after: QueuePage['after']): Prisma.WaitingCaseWhereInput {
  if (after === null) return {};
  const { since, caseId } = after;
  const beyond =
    order === 'oldest' ? { later: { gt: since }, next: { gt: caseId } } : { later: { lt: since }, next: { lt: caseId } };
  return { OR: [{ since: beyond.later }, { since, caseId: beyond.next }] };
}
