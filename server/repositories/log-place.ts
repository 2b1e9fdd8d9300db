import type { Db } from '../db';
import type { StoredPersonKey } from './log-key-repository';

/** What the next entry of the log is made from. */
export type LogPlace = {
  /** The newest entry; null where the log is empty. */
  head: { seq: number; hash: string } | null;
  /** Commitment to the subject; null where no entry is about it yet. */
  commitment: string | null;
  /** Key of whoever acts: that of their link to the case where it is theirs, else their other one. Null where there is none. */
  actorKey: StoredPersonKey | null;
};

type Row = { seq: number | null; hash: string | null; commitment: string | null; keyId: string | null; key: string | null };

/** Read in one statement. `caseId` is the case that the entry is about, `actorId` null for the machine. */
export async function findLogPlace(
  db: Db,
  { actorId, kind, subjectId }: { actorId: string | null; kind: string; subjectId: string },
): Promise<LogPlace> {
  const caseId = kind === 'case' ? subjectId : null;
  const [row] = await db.$queryRaw<Row[]>`
    SELECT "head"."seq", "head"."hash", "SubjectKey"."commitment", "PersonKey"."id" AS "keyId", "PersonKey"."key"
    FROM (SELECT 1) AS "one"
    LEFT JOIN (SELECT "seq", "hash" FROM "LogEntry" ORDER BY "seq" DESC LIMIT 1) AS "head" ON TRUE
    LEFT JOIN "SubjectKey" ON "SubjectKey"."kind" = ${kind} AND "SubjectKey"."subjectId" = ${subjectId}
    LEFT JOIN "PersonKey" ON "PersonKey"."userId" = ${actorId} AND "PersonKey"."caseId" = COALESCE(
      (SELECT "caseId" FROM "PostedCase" WHERE "caseId" = ${caseId} AND "userId" = ${actorId}), '')`;
  if (row === undefined) throw new Error('One row is always there.');
  const { seq, hash, commitment, keyId, key } = row;
  return {
    head: seq === null || hash === null ? null : { seq, hash },
    commitment,
    actorKey: keyId === null ? null : { id: keyId, key },
  };
}
