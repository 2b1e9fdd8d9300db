import type { CaseStatus } from '../../shared/schemas/case';
import type { Db } from '../db';
import type { WaitingPlace } from './waiting-cases';

/** Where a case stands: its status, whose it is, and its place in the queue. Null where nobody is linked, or it does not wait. */
export type CaseStanding = { status: CaseStatus; ownerId: string | null; place: WaitingPlace | null };

type Row = {
  status: string;
  ownerId: string | null;
  since: Date | null;
  claimedBy: string | null;
  claimedUntil: Date | null;
};

/** Where a case stands, read in one statement; null where there is no such case. */
export async function findCaseStanding(db: Db, caseId: string): Promise<CaseStanding | null> {
  const [row] = await db.$queryRaw<Row[]>`
    SELECT "status", "PostedCase"."userId" AS "ownerId", "since", "claimedBy", "claimedUntil"
    FROM "CaseFile"
    LEFT JOIN "PostedCase" ON "PostedCase"."caseId" = "CaseFile"."id"
    LEFT JOIN "WaitingCase" ON "WaitingCase"."caseId" = "CaseFile"."id"
    WHERE "CaseFile"."id" = ${caseId}`;
  if (row === undefined) return null;
  const { status, ownerId, since, ...claim } = row;
  return { status: status as CaseStatus, ownerId, place: since === null ? null : { since, ...claim } };
}
