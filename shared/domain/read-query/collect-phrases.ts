import type { NamedTarget, Phrase, Target } from './phrase';
import { type PhraseTerms, phraseTerms, phraseWords } from './phrase-terms';
import { CANNOT_TERM, NO_TERM } from './token';

export type Builder = { byKey: Map<string, Phrase>; known: Map<string, NamedTarget>; words: Map<string, number> };

/** Labels and synonyms as written count fully; slugs and derived phrases a little less, so that written ones win. */
export const QUALITY = { written: 1, slug: 0.9, derived: 0.94, guessed: 0.85, told: 1.4 } as const;

/** All words of the phrase needed, small ones too: "no reset pulse" is not "no reset". */
export function addWhole(builder: Builder, phrase: string, target: Target): void {
  const words = phraseWords(phrase);
  const terms = phraseTerms(words, false);
  if (terms !== null)
    insert(builder, {
      terms: { ...terms, required: [...terms.required, ...terms.optional], optional: [] },
      words,
      target,
      quality: QUALITY.written,
    });
}

export function add(builder: Builder, phrase: string, target: Target, quality: number): void {
  addWords(builder, phraseWords(phrase), target, quality);
}

export function addWords(builder: Builder, words: readonly string[], target: Target, quality: number, asFix = false): void {
  for (const word of words) builder.words.set(word, (builder.words.get(word) ?? 0) + 1);
  const terms = phraseTerms(words, asFix);
  if (terms !== null) insert(builder, { terms, words, target, quality });
}

type Entry = { terms: PhraseTerms; words: readonly string[]; target: Target; quality: number };

export function insert(builder: Builder, { terms, words, target, quality }: Entry): void {
  const key = `${[...terms.required].sort().join(' ')}|${[...terms.optional].sort().join(' ')}`;
  const phrase: Phrase = builder.byKey.get(key) ?? {
    id: builder.byKey.size,
    ...terms,
    noSlot: terms.required.findIndex(isNo),
    droppable: droppableSlots(terms),
    targets: [],
  };
  builder.byKey.set(key, phrase);
  const name = `${key} > ${Object.values(target).join(' ')}`;
  const known = builder.known.get(name);
  if (known !== undefined) {
    for (const word of words) known.words.add(word);
    known.quality = Math.max(known.quality, quality);
    return;
  }
  const derived =
    quality < QUALITY.written && phrase.targets.some((t) => t.target.kind === target.kind && t.quality >= QUALITY.written);
  if (derived && target.kind !== 'subject' && target.kind !== 'outcome') return;
  const named: NamedTarget = { target, quality, words: new Set(words) };
  builder.known.set(name, named);
  phrase.targets.push(named);
}

function droppableSlots({ required, small }: PhraseTerms): number {
  return required.reduce((bits, term, slot) => (small.includes(term) ? bits | (1 << slot) : bits), 0);
}

export function isNo(term: string): boolean {
  return term === NO_TERM || term === CANNOT_TERM;
}
