import type { Db } from '../db';

/** A form as stored: `document` is JSON text, `caseId` the case whose changes it holds, or null. */
export type StoredDraft = { id: string; document: string; caseId: string | null; updatedAt: Date };

const select = { id: true, document: true, caseId: true, updatedAt: true } as const;

/** A draft of this owner, or null: a draft of somebody else is not there. */
export function findDraft(db: Db, ownerId: string, id: string): Promise<StoredDraft | null> {
  return db.draft.findFirst({ where: { id, ownerId }, select });
}

/** The draft that holds the changes to a case, or null. */
export function findDraftOfCase(db: Db, ownerId: string, caseId: string): Promise<StoredDraft | null> {
  return db.draft.findFirst({ where: { caseId, ownerId }, select });
}

/** An owner's drafts, the last touched first. */
export function listDrafts(db: Db, ownerId: string): Promise<StoredDraft[]> {
  return db.draft.findMany({ where: { ownerId }, orderBy: [{ updatedAt: 'desc' }, { id: 'asc' }], select });
}

export function countDrafts(db: Db, ownerId: string): Promise<number> {
  return db.draft.count({ where: { ownerId } });
}

export async function insertDraft(db: Db, ownerId: string, draft: StoredDraft): Promise<void> {
  await db.draft.create({ data: { ...draft, ownerId }, select: { id: true } });
}

/** Writes a draft anew. False where this owner has none of this id. */
export async function updateDraft(db: Db, ownerId: string, draft: Omit<StoredDraft, 'caseId'>): Promise<boolean> {
  const { id, document, updatedAt } = draft;
  return (await db.draft.updateMany({ where: { id, ownerId }, data: { document, updatedAt } })).count > 0;
}

/** Removes a draft; where there is none of this owner's, nothing happens. */
export async function deleteDraft(db: Db, ownerId: string, id: string): Promise<void> {
  await db.draft.deleteMany({ where: { id, ownerId } });
}

/** Removes the drafts that hold changes to a case. */
export async function deleteDraftsOfCase(db: Db, caseId: string): Promise<void> {
  await db.draft.deleteMany({ where: { caseId } });
}
