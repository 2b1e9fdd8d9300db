import type { Db } from '../db';
import { bulkInsert } from './bulk-insert';

/** What a person's key is for: a case that they have posted, or everything else that they do. */
export type PersonKeyOwner = { userId: string; caseId: string | null };

/** The key of a person as stored: `key` is null until an entry needs it. */
export type StoredPersonKey = { id: string; key: string | null };

/**
 * The key of a person that is for everything but their cases. Null where the person is not there any more.
 */
export function findPersonKey(db: Db, userId: string): Promise<StoredPersonKey | null> {
  return db.personKey.findUnique({ where: { userId_caseId: { userId, caseId: '' } }, select: { id: true, key: true } });
}

/** Gives a person's key its random bytes, unless it has some by now. Returns those that it has then. */
export async function fillPersonKey(db: Db, id: string, bytes: string): Promise<string> {
  const [row] = await db.$queryRaw<{ key: string }[]>`
    UPDATE "PersonKey" SET "key" = COALESCE("key", ${bytes}) WHERE "id" = ${id} RETURNING "key"`;
  if (row === undefined) throw new Error('This key is not there any more.');
  return row.key;
}

/** Keeps the key of a subject with the commitment made by it. */
export async function insertSubjectKey(
  db: Db,
  row: { kind: string; subjectId: string; key: string; commitment: string },
): Promise<void> {
  await bulkInsert(db, 'SubjectKey', [row]);
}

/** Ids of the keys that were destroyed, in order. They are random and say nothing about anybody. */
export async function listDestroyedKeys(db: Db): Promise<string[]> {
  return (await db.destroyedKey.findMany({ orderBy: { id: 'asc' }, select: { id: true } })).map(({ id }) => id);
}

/** Remembers keys as destroyed. */
export async function insertDestroyedKeys(db: Db, ids: readonly string[]): Promise<void> {
  for (const id of ids) await db.destroyedKey.upsert({ where: { id }, create: { id }, update: {}, select: { id: true } });
}

/** Whose keys are remembered as destroyed and are there all the same: only a restored backup has such. */
export async function findReturnedKeys(db: Db): Promise<PersonKeyOwner[]> {
  const rows = await db.$queryRaw<{ userId: string; caseId: string }[]>`
    SELECT "userId", "caseId" FROM "PersonKey" WHERE "id" IN (SELECT "id" FROM "DestroyedKey") ORDER BY "id"`;
  return rows.map(({ userId, caseId }) => ({ userId, caseId: caseId === '' ? null : caseId }));
}

/** Keys of the accounts that may moderate, with their names: what says who did something. */
export async function listStaffKeys(db: Db): Promise<{ userId: string; name: string; key: string }[]> {
  const rows = await db.personKey.findMany({
    where: { caseId: '', key: { not: null }, user: { role: { in: ['moderator', 'keeper'] } } },
    select: { userId: true, key: true, user: { select: { name: true } } },
  });
  return rows.flatMap(({ userId, key, user }) => (key === null ? [] : [{ userId, key, name: user.name }]));
}

/** Ids of what these commitments stand for, for those whose keys are there. */
export async function findSubjects(db: Db, commitments: readonly string[]): Promise<Map<string, string>> {
  const rows = await db.subjectKey.findMany({
    where: { commitment: { in: [...new Set(commitments)] } },
    select: { commitment: true, subjectId: true },
  });
  return new Map(rows.map(({ commitment, subjectId }) => [commitment, subjectId]));
}
