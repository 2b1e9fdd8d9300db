import type { Cause, Check, Fix, Symptom, Vocabulary } from '../../schemas/vocabulary';
import type { WordKind } from '../../schemas/word-edit';

export type Word = Symptom | Check | Cause | Fix;

const LISTS = { symptom: 'symptoms', check: 'checks', cause: 'causes', fix: 'fixes' } as const satisfies Record<
  WordKind,
  keyof Vocabulary
>;

/** The entries of a kind, in their order. */
export function wordsOfKind(vocabulary: Vocabulary, kind: WordKind): readonly Word[] {
  return vocabulary[LISTS[kind]];
}

/** The entry of this slug, or undefined. */
export function findWord(vocabulary: Vocabulary, kind: WordKind, slug: string): Word | undefined {
  return wordsOfKind(vocabulary, kind).find((word) => word.slug === slug);
}

/** The vocabulary with every entry of a kind put through `change`; null takes it out. */
export function mapWords(vocabulary: Vocabulary, kind: WordKind, change: (word: Word) => Word | null): Vocabulary {
  const changed = wordsOfKind(vocabulary, kind).flatMap((word) => change(word) ?? []);
  return { ...vocabulary, [LISTS[kind]]: changed };
}

/** The vocabulary with one more entry at the end of its kind. */
export function appendWord(vocabulary: Vocabulary, kind: WordKind, word: Word): Vocabulary {
  return { ...vocabulary, [LISTS[kind]]: [...wordsOfKind(vocabulary, kind), word] };
}

/** The vocabulary without what was retired: what is read out of words and offered. */
export function withoutRetired(vocabulary: Vocabulary): Vocabulary {
  const kinds = Object.keys(LISTS) as WordKind[];
  if (kinds.every((kind) => wordsOfKind(vocabulary, kind).every((word) => !word.retired))) return vocabulary;
  return kinds.reduce((v, kind) => mapWords(v, kind, (word) => (word.retired ? null : word)), vocabulary);
}
