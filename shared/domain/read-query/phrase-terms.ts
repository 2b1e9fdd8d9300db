import { actionTermsOf } from './fix-words';
import { normalWord, stemOf, twinOf } from './spelling';
import { stateWords } from './state-words';
import { CANNOT_TERM, NO_TERM, OTHER_TERM } from './token';
import { tokenise } from './tokenise';
import {
  CANNOT_WORDS,
  FILLER_WORDS,
  GRAMMAR_WORDS,
  JOINER_WORDS,
  KEPT_PARTICLES,
  KEPT_WHEN_SHORT,
  NEGATOR_WORDS,
  OTHER_WORDS,
  REFUSING_WORDS,
  WEAK_WORDS,
} from './word-classes';

/** The words of a vocabulary phrase in normal form, marks left out. */
export function phraseWords(phrase: string): string[] {
  const words = tokenise(phrase, 40)
    .tokens.filter((t) => !t.mark)
    .map((t) => normalWord(t.word));
  return words.flatMap((w, at) =>
    w === 'known' && words[at + 1] === 'good' ? ['known-good'] : w === 'good' && words[at - 1] === 'known' ? [] : [w],
  );
}

/** True for "no", "not", "without", and for "fails" or "refuses" before "to". */
export function isNegator(word: string, next: string | undefined): boolean {
  return NEGATOR_WORDS.has(word) || (next === 'to' && REFUSING_WORDS.has(word));
}

/** One term for a word of a phrase; in fixes verbs meet by kind. */
export function termOf(word: string, asFix: boolean): string {
  const action = asFix ? actionTermsOf(word)[0] : undefined;
  if (!asFix && OTHER_WORDS.has(word)) return OTHER_TERM;
  return action ?? stemOf(twinOf(word));
}

/** A phrase of nothing but a state ("not present") needs its small words to say of what ("device"). */
const STATE_STEMS: ReadonlySet<string> = new Set([...stateWords()].map(stemOf));

const ARTICLES: ReadonlySet<string> = new Set(['a', 'an', 'the', 'it', 'is', 'to', 'of']);

type Rank = 'telling' | 'small' | 'kept' | 'particle' | 'grammar' | 'no';

function rankedTerm(word: string, next: string | undefined, asFix: boolean): { term: string; rank: Rank } {
  if (isNegator(word, next)) return { term: CANNOT_WORDS.has(word) ? CANNOT_TERM : NO_TERM, rank: 'no' };
  const term = termOf(word, asFix);
  if (asFix && actionTermsOf(word).length > 0) return { term, rank: 'telling' };
  if (!asFix && OTHER_WORDS.has(word)) return { term, rank: 'telling' };
  if (GRAMMAR_WORDS.has(word))
    return { term, rank: KEPT_WHEN_SHORT.has(word) ? 'kept' : KEPT_PARTICLES.has(word) ? 'particle' : 'grammar' };
  return { term, rank: FILLER_WORDS.has(word) || WEAK_WORDS.has(word) ? 'small' : 'telling' };
}

/** `small` are the required terms that the phrase could do without: words such as "line" beside one telling word. */
export type PhraseTerms = { required: string[]; optional: string[]; small: string[]; joined: boolean };

/**
 * The terms of a phrase. Grammar is dropped; words that say little ("all", "line") are required
 * only where fewer than two telling words would remain without them, else optional.
 * Returns null where nothing telling remains.
 */
export function phraseTerms(words: readonly string[], asFix: boolean): PhraseTerms | null {
  const found: { term: string; rank: Rank }[] = [];
  let joined = false;
  for (const [at, word] of words.entries()) {
    if (word === 'but') continue;
    if (JOINER_WORDS.has(word)) joined = true;
    else found.push(rankedTerm(word, words[at + 1], asFix));
  }
  const of = (rank: Rank) => found.filter((f) => f.rank === rank).map((f) => f.term);
  const telling = of('telling');
  const negated = found.some((f) => f.rank === 'no');
  const few = new Set(telling).size < 2 - (negated ? 1 : 0) || telling.every((t) => STATE_STEMS.has(t));
  const needed: ReadonlySet<Rank> = new Set<Rank>([
    'telling',
    'no',
    ...(few ? (['small', 'kept'] as const) : []),
    ...(few && of('small').length === 0 ? (['particle'] as const) : []),
    ...(telling.length === 0 ? (['grammar', 'particle'] as const) : []),
  ]);
  const required = [...new Set(found.filter((f) => needed.has(f.rank) && !ARTICLES.has(f.term)).map((f) => f.term))];
  const optional = few ? [] : [...new Set(of('small'))].filter((t) => !required.includes(t));
  if (required.length === 0 || (required.length === 1 && negated)) return null;
  const named = telling.some((t) => !STATE_STEMS.has(t) && /^[a-z].*[a-z]/.test(t)) && !negated;
  return { required: required.slice(0, 12), optional: optional.slice(0, 6), small: named ? of('small') : [], joined };
}
