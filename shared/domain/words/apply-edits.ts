import type { Vocabulary } from '../../schemas/vocabulary';
import { WORD_KINDS, type WordEdit } from '../../schemas/word-edit';
import { joinSynonyms, mergeWords } from './merge-words';
import { appendWord, findWord, mapWords, type Word } from './word-lists';

/**
 * The vocabulary as it ships, with the moderators' changes on top, in their order. The shipped entries stay what they are
 * underneath, so leaving a change out gives back exactly what was there without it. A change that has nothing to act on any
 * more is passed over; an entry that ships meanwhile under the slug of an added one takes its place.
 */
export function applyEdits(shipped: Vocabulary, edits: readonly WordEdit[]): Vocabulary {
  return edits.reduce(applyEdit, withoutAnchors(shipped));
}

/** Added entries have a row that cases can refer to, without categories: only a shipped entry is whole there. */
function withoutAnchors(stored: Vocabulary): Vocabulary {
  return WORD_KINDS.reduce((v, kind) => mapWords(v, kind, (word) => (word.categories.length > 0 ? word : null)), stored);
}

function applyEdit(vocabulary: Vocabulary, edit: WordEdit): Vocabulary {
  if (edit.act === 'merge') return mergeWords(vocabulary, edit);
  if (edit.act === 'add') {
    const isThere = findWord(vocabulary, edit.kind, edit.entry.slug) !== undefined;
    return isThere ? vocabulary : appendWord(vocabulary, edit.kind, edit.entry);
  }
  return mapWords(vocabulary, edit.kind, (word) => (word.slug === edit.slug ? changed(word, edit) : word));
}

function changed(word: Word, edit: Exclude<WordEdit, { act: 'merge' | 'add' }>): Word {
  if (edit.act === 'retire') return { ...word, retired: true };
  if (edit.act === 'reword') {
    const { label, meaning } = edit;
    // What it was called is still what people type.
    return { ...word, label, meaning, synonyms: joinSynonyms({ label, synonyms: word.synonyms }, [word.label]) };
  }
  const removed = new Set(edit.remove.map((name) => name.toLowerCase()));
  const kept = word.synonyms.filter((name) => !removed.has(name.toLowerCase()));
  return { ...word, synonyms: joinSynonyms({ label: word.label, synonyms: kept }, edit.add) };
}
