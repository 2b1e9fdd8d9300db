import type { Db } from '../db';

/** What an evaluation of the casebook found: one serialised document. */
export type StoredEvaluation = { id: string; at: Date; document: string; recordCount: number };

/** Keeps an evaluation; earlier ones stay. */
export async function saveEvaluation(db: Db, evaluation: StoredEvaluation): Promise<void> {
  await db.evaluation.create({ data: evaluation, select: { id: true } });
}

/** The newest evaluation, or null where none was run yet. */
export function findNewestEvaluation(db: Db): Promise<StoredEvaluation | null> {
  return db.evaluation.findFirst({
    orderBy: [{ at: 'desc' }, { id: 'asc' }],
    select: { id: true, at: true, document: true, recordCount: true },
  });
}
