import type { Check, Vocabulary } from '../../schemas/vocabulary';
import type { WordChange, WordEdit, WordKind } from '../../schemas/word-edit';
import { joinSynonyms } from './merge-words';
import { findWord, type Word, wordsOfKind } from './word-lists';

/** What a change comes to: the edit to keep, or what is wrong with which field. */
export type JudgedChange = { edit: WordEdit } | { fields: Record<string, string> };

/** Turns what a moderator asks for into an edit of the vocabulary as it is, or says why it cannot be done. */
export function judgeChange(vocabulary: Vocabulary, change: WordChange): JudgedChange {
  switch (change.act) {
    case 'add':
      return judgeAdd(vocabulary, change);
    case 'merge':
      return judgeMerge(vocabulary, change);
    default:
      return judgeOwn(vocabulary, change);
  }
}

function judgeAdd(
  vocabulary: Vocabulary,
  { kind, like, label, meaning, synonyms }: Extract<WordChange, { act: 'add' }>,
): JudgedChange {
  const model = findWord(vocabulary, kind, like);
  if (model === undefined) return { fields: { like: 'The vocabulary has no such entry. Choose one from the list.' } };
  const slug = slugOf(label);
  if (slug === '') return { fields: { label: 'Use letters or digits.' } };
  const taken = clash(vocabulary, kind, [label, ...synonyms], '');
  if (taken !== null) return { fields: { label: taken } };
  const { retired: _, ...rest } = model;
  const own = { slug, label, meaning, synonyms: joinSynonyms({ label, synonyms: [] }, synonyms) };
  const entry = { ...rest, ...own, ...('absentPhrases' in model && { absentPhrases: [] }) };
  return { edit: { act: 'add', kind, entry } as WordEdit };
}

function judgeMerge(vocabulary: Vocabulary, change: Extract<WordChange, { act: 'merge' }>): JudgedChange {
  const { kind, from, into } = change;
  const [gone, stays] = [findWord(vocabulary, kind, from), findWord(vocabulary, kind, into)];
  const missing = 'The vocabulary has no such entry. Choose one from the list.';
  if (gone === undefined) return { fields: { from: missing } };
  if (stays === undefined) return { fields: { into: missing } };
  if (from === into) return { fields: { into: 'Choose another entry: one cannot be merged into itself.' } };
  if (stays.retired) return { fields: { into: 'This entry is retired. Bring it back first, by undoing that change.' } };
  if (kind === 'check') {
    const known = new Set((stays as Check).outcomes.map(({ slug }) => slug));
    const strange = (gone as Check).outcomes.filter(({ slug }) => !known.has(slug)).map(({ label }) => `"${label}"`);
    if (strange.length > 0) return { fields: { into: `${stays.label} has no outcome for ${strange.join(', ')}.` } };
  }
  return { edit: change };
}

function judgeOwn(vocabulary: Vocabulary, change: Exclude<WordChange, { act: 'add' | 'merge' }>): JudgedChange {
  const word = findWord(vocabulary, change.kind, change.slug);
  if (word === undefined) return { fields: { slug: 'The vocabulary has no such entry. Choose one from the list.' } };
  if (change.act === 'retire') return word.retired ? { fields: { slug: 'It is retired already.' } } : { edit: change };
  if (change.act === 'reword') {
    if (word.label === change.label && word.meaning === change.meaning) return { fields: { label: 'Nothing was changed.' } };
    const taken = clash(vocabulary, change.kind, [change.label], change.slug);
    return taken === null ? { edit: change } : { fields: { label: taken } };
  }
  if (change.add.length + change.remove.length === 0) return { fields: { synonyms: 'Nothing was changed.' } };
  const taken = clash(vocabulary, change.kind, change.add, change.slug);
  return taken === null ? { edit: change } : { fields: { synonyms: taken } };
}

/** Why a name cannot be taken: another entry of the kind goes by it. */
function clash(vocabulary: Vocabulary, kind: WordKind, names: readonly string[], own: string): string | null {
  const wanted = new Set(names.map((name) => name.toLowerCase()));
  const goesBy = (word: Word) => [word.label, ...word.synonyms].find((name) => wanted.has(name.toLowerCase()));
  for (const word of wordsOfKind(vocabulary, kind)) {
    const name = word.slug === own ? undefined : goesBy(word);
    if (name !== undefined) return `"${name}" is what "${word.label}" goes by already. Use other words, or merge the two.`;
  }
  return null;
}

/** A label as a slug: ASCII letters and digits, joined by hyphens. */
export function slugOf(label: string): string {
  return label
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 80)
    .replace(/-+$/, '');
}
