import type { Prisma } from '../../../prisma/generated/client';
import type { Actor } from '../../../shared/domain/can/can';
import type { LogKind } from '../../../shared/domain/log/log-kinds';
import { judgeChange } from '../../../shared/domain/words/judge-change';
import { findWord } from '../../../shared/domain/words/word-lists';
import { AppError } from '../../../shared/errors';
import type { Vocabulary } from '../../../shared/schemas/vocabulary';
import type { WordChange, WordEdit } from '../../../shared/schemas/word-edit';
import type { Db } from '../../db';
import { appendCaseChanges } from '../../repositories/case-change-repository';
import { appendEvent } from '../../repositories/event-log-repository';
import { loadVocabulary } from '../../repositories/load-vocabulary';
import { hasWordRow, insertWordAnchor, listCasesNaming } from '../../repositories/word-anchor-repository';
import { insertWordEdit, listWordEdits, markWordEditUndone } from '../../repositories/word-edit-repository';
import { appendLog } from '../log/append-log';
import { inTransaction } from '../submit-transaction';

export type WordContext = { actor: Actor; now: Date; newId: () => string };

/** `refused` says what to change in which field; nothing was changed then. */
export type WordOutcome = { status: 'done'; revision: number } | { status: 'refused'; fields: Record<string, string> };

/**
 * Changes the vocabulary, in one transaction with its entry in the log and the word to everything that follows: the casebook is
 * loaded anew, and the indexes are told of the cases that read differently now. Stored cases keep the words they came with.
 */
export function changeWords(db: Db, change: WordChange, context: WordContext): Promise<WordOutcome> {
  return inTransaction(db, async (tx): Promise<WordOutcome> => {
    const before = await loadVocabulary(tx);
    const judged = judgeChange(before, change);
    if ('fields' in judged) return { status: 'refused', fields: judged.fields };
    const { edit } = judged;
    if (edit.act === 'add') {
      if (await hasWordRow(tx, edit.kind, edit.entry.slug)) {
        return {
          status: 'refused',
          fields: { label: 'An entry by this name was here before. Bring it back by undoing that change.' },
        };
      }
      await insertWordAnchor(tx, edit);
    }
    const revision = await insertWordEdit(tx, context.now.toISOString().slice(0, 7), edit);
    await spread(tx, edit, { revision, ...context }, { kind: logKindOf(edit), detail: detailOf(before, edit) });
    return { status: 'done', revision };
  });
}

/**
 * Takes a change back: the vocabulary is what it would be without it. Refuses to take away an added entry that cases name.
 * @throws AppError `entry-not-found` where no such change is in force
 */
export function undoWords(db: Db, revision: number, context: WordContext): Promise<WordOutcome> {
  return inTransaction(db, async (tx): Promise<WordOutcome> => {
    const stored = (await listWordEdits(tx)).find((other) => other.revision === revision && !other.undone);
    if (stored === undefined) throw new AppError('entry-not-found');
    const { edit } = stored;
    if (edit.act === 'add') {
      const cases = (await listCasesNaming(tx, edit.kind, edit.entry.slug)).length;
      if (cases > 0)
        return { status: 'refused', fields: { revision: `${cases} cases name this entry. Retire it, or merge it.` } };
    }
    const detail = detailOf(await loadVocabulary(tx), edit);
    await markWordEditUndone(tx, revision);
    await spread(tx, edit, { revision, ...context }, { kind: undoKindOf(edit), detail: { ...detail, undone: edit.act } });
    return { status: 'done', revision };
  });
}

/** The log, and everybody who follows. */
async function spread(
  tx: Prisma.TransactionClient,
  edit: WordEdit,
  { revision, actor, now, newId }: WordContext & { revision: number },
  said: { kind: LogKind; detail: Record<string, unknown> },
): Promise<void> {
  const slug = slugIn(edit);
  const subject = { kind: 'word', id: `${edit.kind}/${slug}` } as const;
  await appendLog(tx, { at: now, actorId: actor.id, subject, kind: said.kind, detail: { revision, ...said.detail } });
  await appendCaseChanges(tx, await listCasesNaming(tx, edit.kind, slug));
  await appendEvent(tx, {
    id: newId(),
    at: now,
    kind: 'vocabulary',
    actor: 'moderator',
    detail: `Revision ${revision} of the vocabulary.`,
  });
}

const slugIn = (edit: WordEdit): string => (edit.act === 'add' ? edit.entry.slug : edit.act === 'merge' ? edit.from : edit.slug);

function logKindOf(edit: WordEdit): LogKind {
  if (edit.act === 'synonyms') return edit.add.length > 0 ? 'synonym-added' : 'synonym-removed';
  return ({ add: 'word-added', reword: 'word-reworded', merge: 'words-merged', retire: 'word-retired' } as const)[edit.act];
}

function undoKindOf(edit: WordEdit): LogKind {
  return edit.act === 'merge' ? 'merge-undone' : edit.act === 'retire' ? 'word-brought-back' : 'word-change-undone';
}

/** What was changed, in words of the vocabulary. */
function detailOf(vocabulary: Vocabulary, edit: WordEdit): Record<string, unknown> {
  const named = (slug: string) => findWord(vocabulary, edit.kind, slug)?.label ?? slug;
  const { kind } = edit;
  if (edit.act === 'add') return { kind, label: edit.entry.label, meaning: edit.entry.meaning };
  if (edit.act === 'merge') return { kind, label: named(edit.from), into: named(edit.into) };
  if (edit.act === 'synonyms') return { kind, label: named(edit.slug), added: edit.add, removed: edit.remove };
  if (edit.act === 'reword') return { kind, label: named(edit.slug), to: edit.label, meaning: edit.meaning };
  return { kind, label: named(edit.slug) };
}
