import type { Db } from '../db';

/** Fitted settings of the statistical model as stored: one serialised document, named by its hash. */
export type StoredSettings = { hash: string; document: string; recordCount: number; fittedAt: Date };

const select = { hash: true, document: true, recordCount: true, fittedAt: true } as const;

/** The settings in use: the newest. Null where none were fitted yet. */
export function findNewestSettings(db: Db): Promise<StoredSettings | null> {
  return db.modelSettings.findFirst({ orderBy: [{ fittedAt: 'desc' }, { hash: 'asc' }], select });
}

/** Stores fitted settings and puts them in use. */
export async function saveSettings(db: Db, settings: StoredSettings): Promise<void> {
  const { hash, ...data } = settings;
  await db.modelSettings.upsert({ where: { hash }, create: settings, update: data, select: { hash: true } });
}
