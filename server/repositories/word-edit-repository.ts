import { type WordEdit, wordEditSchema } from '../../shared/schemas/word-edit';
import { aliasesOf, NO_ALIASES, type WordAliases } from '../../shared/domain/words/word-aliases';
import type { Db } from '../db';

/** A change of the vocabulary as stored. */
export type StoredEdit = { revision: number; month: string; undone: boolean; edit: WordEdit };

const select = { revision: true, month: true, undone: true, document: true } as const;

/** Every change of the vocabulary, the undone ones too, in order of revision. */
export async function listWordEdits(db: Db): Promise<StoredEdit[]> {
  const rows = await db.vocabularyEdit.findMany({ orderBy: { revision: 'asc' }, select });
  return rows.map(({ document, ...row }) => ({ ...row, edit: wordEditSchema.parse(JSON.parse(document)) }));
}

/** The changes that are in force, in order of revision. */
export async function listWordEditsInForce(db: Db): Promise<WordEdit[]> {
  return (await listWordEdits(db)).filter(({ undone }) => !undone).map(({ edit }) => edit);
}

/** What merged entries go by now. */
export async function readWordAliases(db: Db): Promise<WordAliases> {
  const merges = await db.$queryRaw<unknown[]>`
    SELECT 1 FROM "VocabularyEdit" WHERE NOT "undone" AND "document" LIKE '%"act":"merge"%' LIMIT 1`;
  return merges.length === 0 ? NO_ALIASES : aliasesOf(await listWordEditsInForce(db));
}

/** Keeps a change. Returns its revision. */
export async function insertWordEdit(db: Db, month: string, edit: WordEdit): Promise<number> {
  const row = await db.vocabularyEdit.create({ data: { month, document: JSON.stringify(edit) }, select: { revision: true } });
  return row.revision;
}

/** Marks a change as undone. False where there is none in force with this revision. */
export async function markWordEditUndone(db: Db, revision: number): Promise<boolean> {
  return (await db.vocabularyEdit.updateMany({ where: { revision, undone: false }, data: { undone: true } })).count > 0;
}
