import type { Db } from '../db';

/** A waiting case's place in the queue, and who looks at it. */
export type WaitingPlace = { since: Date; claimedBy: string | null; claimedUntil: Date | null };

/** Puts cases into the queue; one that is in it keeps its place. */
export async function enterQueue(db: Db, caseIds: readonly string[], now: Date): Promise<void> {
  const there = await db.waitingCase.findMany({ where: { caseId: { in: [...caseIds] } }, select: { caseId: true } });
  const known = new Set(there.map((row) => row.caseId));
  const fresh = caseIds.filter((caseId) => !known.has(caseId));
  if (fresh.length > 0) await db.waitingCase.createMany({ data: fresh.map((caseId) => ({ caseId, since: now })) });
}

/** Takes a case out of the queue, with who looked at it and since when it waited; nothing happens where it is not in it. */
export async function leaveQueue(db: Db, caseId: string): Promise<void> {
  await db.$executeRaw`DELETE FROM "WaitingCase" WHERE "caseId" = ${caseId}`;
}

/** A waiting case's place, or null where it does not wait. */
export function findWaitingPlace(db: Db, caseId: string): Promise<WaitingPlace | null> {
  return db.waitingCase.findUnique({ where: { caseId }, select: { since: true, claimedBy: true, claimedUntil: true } });
}

/**
 * Gives a waiting case to a moderator where nobody else looks at it at this moment: one statement, so that of two who
 * ask at once one gets it. Returns whether it is theirs now.
 */
export async function takeClaim(db: Db, claim: { caseId: string; userId: string; now: Date; until: Date }): Promise<boolean> {
  const { caseId, userId, now, until } = claim;
  const free = [{ claimedBy: null }, { claimedBy: userId }, { claimedUntil: { lte: now } }];
  const data = { claimedBy: userId, claimedUntil: until };
  return (await db.waitingCase.updateMany({ where: { caseId, OR: free }, data })).count > 0;
}

/** Gives a case back that this moderator looks at; nothing happens where they do not. */
export async function dropClaim(db: Db, caseId: string, userId: string): Promise<void> {
  await db.waitingCase.updateMany({ where: { caseId, claimedBy: userId }, data: { claimedBy: null, claimedUntil: null } });
}
