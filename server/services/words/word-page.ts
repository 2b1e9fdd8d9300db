import type { CasebookModel } from '../../../shared/domain/casebook/casebook-model';
import { type NearWord, nearestWords } from '../../../shared/domain/words/nearest-words';
import { findWord } from '../../../shared/domain/words/word-lists';
import type { Vocabulary } from '../../../shared/schemas/vocabulary';
import { type WordEdit, type WordKind, wordKindSchema } from '../../../shared/schemas/word-edit';
import type { Db } from '../../db';
import { listProposedWords } from '../../repositories/submission-contents';
import { listUnreadWords, type UnreadWordCount } from '../../repositories/unread-word-repository';
import { listWordEdits } from '../../repositories/word-edit-repository';
import { LEAST_SHOWN, monthsBefore } from './unread-words';

/** A change as the page tells it, with what it needs to offer its undoing. */
export type EditLine = { revision: number; month: string; undone: boolean; act: WordEdit['act']; kind: WordKind; text: string };
/** A word that contributors propose and nothing goes by yet. */
export type ProposedLine = { kind: WordKind; word: string; meaning: string; cases: number; near: NearWord[] };

export type WordPage = {
  edits: EditLine[];
  proposed: ProposedLine[];
  unread: (UnreadWordCount & { near: (NearWord & { kind: WordKind })[] })[];
  leastShown: number;
};

const MOST_LINES = 200;
const UNREAD_MONTHS = 12;
/** Similarity of a name that is just the same. */
const SAME = 1;

/** Everything that the vocabulary's page lists. */
export async function wordPage(db: Db, model: CasebookModel, now: Date): Promise<WordPage> {
  const { vocabulary } = model.coding;
  const stored = await listWordEdits(db);
  const month = monthsBefore(now.toISOString().slice(0, 7), UNREAD_MONTHS - 1);
  const unread = await listUnreadWords(db, { since: month, least: LEAST_SHOWN, take: MOST_LINES });
  return {
    edits: stored
      .slice(-MOST_LINES)
      .reverse()
      .map(({ edit, ...line }) => ({ ...line, act: edit.act, kind: edit.kind, text: textOf(vocabulary, edit, stored) })),
    proposed: await proposedLines(db, vocabulary),
    unread: unread
      .filter(({ word }) => isUnread(model, word))
      .map((line) => ({
        ...line,
        near: wordKindSchema.options.flatMap((kind) => nearIn(vocabulary, kind, line.word)).slice(0, 4),
      })),
    leastShown: LEAST_SHOWN,
  };
}

const nearIn = (vocabulary: Vocabulary, kind: WordKind, word: string) =>
  nearestWords(vocabulary, kind, word, 1).map((near) => ({ ...near, kind }));

/** A word that has become a synonym since it was counted is read now. */
const isUnread = (model: CasebookModel, word: string) => model.read(word).unread.length > 0;

async function proposedLines(db: Db, vocabulary: Vocabulary): Promise<ProposedLine[]> {
  const lines = (await listProposedWords(db, MOST_LINES)).map((line) => {
    const kind = wordKindSchema.parse(line.kind);
    return { ...line, kind, near: nearestWords(vocabulary, kind, line.word) };
  });
  return lines.filter(({ near }) => near[0]?.similarity !== SAME);
}

function textOf(vocabulary: Vocabulary, edit: WordEdit, all: readonly { edit: WordEdit }[]): string {
  const named = (slug: string) => {
    const added = all.find((other) => other.edit.act === 'add' && other.edit.entry.slug === slug)?.edit;
    const label = findWord(vocabulary, edit.kind, slug)?.label ?? (added?.act === 'add' ? added.entry.label : slug);
    return `"${label}"`;
  };
  switch (edit.act) {
    case 'add':
      return `${named(edit.entry.slug)} was added`;
    case 'merge':
      return `${named(edit.from)} was merged into ${named(edit.into)}`;
    case 'reword':
      return `${named(edit.slug)} was worded "${edit.label}": ${edit.meaning}`;
    case 'retire':
      return `${named(edit.slug)} was retired`;
    case 'synonyms':
      return [
        ...(edit.add.length > 0 ? [`${named(edit.slug)} goes by ${edit.add.map((name) => `"${name}"`).join(', ')} too`] : []),
        ...(edit.remove.length > 0
          ? [`${named(edit.slug)} goes by ${edit.remove.map((name) => `"${name}"`).join(', ')} no more`]
          : []),
      ].join('; ');
  }
}
