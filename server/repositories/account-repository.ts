import { type Role, roleSchema } from '../../shared/domain/can/role';
import type { Db } from '../db';

export type AccountSummary = { id: string; name: string; role: Role; createdAt: Date };

const summary = { id: true, name: true, role: true, createdAt: true } as const;
type Row = { id: string; name: string; role: string; createdAt: Date };
const toSummary = (row: Row): AccountSummary => ({ ...row, role: roleSchema.parse(row.role) });

/** The account with this id, or null. */
export async function findAccount(db: Db, id: string): Promise<AccountSummary | null> {
  const row = await db.user.findUnique({ where: { id }, select: summary });
  return row && toSummary(row);
}

/** The account that signs in with this name, in whatever case it is typed, or null. */
export async function findAccountByName(db: Db, name: string): Promise<AccountSummary | null> {
  const row = await db.user.findUnique({ where: { username: name.toLowerCase() }, select: summary });
  return row && toSummary(row);
}

/** Every account, by name. */
export async function listAccounts(db: Db): Promise<AccountSummary[]> {
  return (await db.user.findMany({ select: summary, orderBy: { username: 'asc' } })).map(toSummary);
}

/** Gives an account a role. */
export async function setAccountRole(db: Db, id: string, role: Role): Promise<void> {
  await db.user.update({ where: { id }, data: { role }, select: { id: true } });
}

/** Whether an account is the only one that keeps the site. */
export async function isLastKeeper(db: Db, id: string): Promise<boolean> {
  const keepers = await db.user.findMany({ where: { role: 'keeper' }, take: 2, select: { id: true } });
  return keepers.length === 1 && keepers[0]?.id === id;
}

/** The sessions of an account, newest first. */
export async function listSessions(db: Db, userId: string): Promise<{ createdAt: Date; expiresAt: Date }[]> {
  return db.session.findMany({ where: { userId }, select: { createdAt: true, expiresAt: true }, orderBy: { createdAt: 'desc' } });
}

/** Signs an account out everywhere. */
export async function deleteSessions(db: Db, userId: string): Promise<void> {
  await db.session.deleteMany({ where: { userId } });
}

/** The hash of an account's password, or null. */
export async function findPasswordHash(db: Db, userId: string): Promise<string | null> {
  const row = await db.credential.findFirst({ where: { userId, providerId: 'credential' }, select: { password: true } });
  return row?.password ?? null;
}

/** Stores the hash of a new password. */
export async function setPasswordHash(db: Db, userId: string, hash: string, now: Date): Promise<void> {
  await db.credential.updateMany({ where: { userId, providerId: 'credential' }, data: { password: hash, updatedAt: now } });
}

/** Removes an account with its sessions, its password and its reset links. */
export async function deleteAccountRows(db: Db, id: string): Promise<void> {
  await db.verification.deleteMany({ where: { value: id } });
  await db.user.delete({ where: { id }, select: { id: true } });
}
