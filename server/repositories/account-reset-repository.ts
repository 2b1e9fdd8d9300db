import type { Db } from '../db';

const key = (tokenHash: string) => `reset-link:${tokenHash}`;

/** Stores a reset link for an account by the hash of its secret, in place of an earlier one. */
export async function saveResetLink(
  db: Db,
  link: { id: string; tokenHash: string; userId: string; expiresAt: Date; now: Date },
): Promise<void> {
  await db.verification.deleteMany({ where: { value: link.userId, identifier: { startsWith: key('') } } });
  const { id, userId: value, expiresAt, now } = link;
  await db.verification.create({
    data: { id, identifier: key(link.tokenHash), value, expiresAt, createdAt: now, updatedAt: now },
    select: { id: true },
  });
}

/** Id of the account that a reset link is for; null where there is no such link, or not any more. */
export async function findResetLink(db: Db, tokenHash: string, now: Date): Promise<string | null> {
  const row = await db.verification.findFirst({
    where: { identifier: key(tokenHash), expiresAt: { gt: now } },
    select: { value: true },
  });
  return row?.value ?? null;
}

/** Takes a reset link out. Of two that try at once, one is told true. */
export async function takeResetLink(db: Db, tokenHash: string): Promise<boolean> {
  return (await db.verification.deleteMany({ where: { identifier: key(tokenHash) } })).count === 1;
}
