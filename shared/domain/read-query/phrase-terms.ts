import { actionTermsOf } from './fix-words';
import { normalWord, stemOf, twinOf } from './spelling';
import { stateWords } from './state-words';
import { CANNOT_TERM, NO_TERM } from './token';
import { tokenise } from './tokenise';
import { CANNOT_WORDS, FILLER_WORDS, GRAMMAR_WORDS, JOINER_WORDS, NEGATOR_WORDS, REFUSING_WORDS, WEAK_WORDS } from './word-classes';

/** The words of a vocabulary phrase in normal form, marks left out. */
export function phraseWords(phrase: string): string[] {
  return tokenise(phrase, 40).tokens.filter((t) => !t.mark).map((t) => normalWord(t.word));
}

/** True for "no", "not", "without", and for "fails" or "refuses" before "to". */
export function isNegator(word: string, next: string | undefined): boolean {
  return NEGATOR_WORDS.has(word) || (next === 'to' && REFUSING_WORDS.has(word));
}

/** One term for a word of a phrase; in fixes verbs meet by kind. */
export function termOf(word: string, asFix: boolean): string {
  const action = asFix ? actionTermsOf(word)[0] : undefined;
  return action ?? stemOf(twinOf(word));
}

/** A phrase of nothing but a state ("not present") needs its small words to say of what ("device"). */
const STATE_STEMS: ReadonlySet<string> = new Set([...stateWords()].map(stemOf));

export type PhraseTerms = { required: string[]; optional: string[]; joined: boolean };

/**
 * The terms of a phrase. Grammar is dropped; words that say little ("all", "line") are required
 * only where fewer than two telling words would remain without them, else optional.
 * Returns null where nothing telling remains.
 */
export function phraseTerms(words: readonly string[], asFix: boolean): PhraseTerms | null {
  const telling: string[] = [];
  let no: string = NO_TERM;
  const small: string[] = [];
  let joined = false;
  let negated = false;
  for (const [at, word] of words.entries()) {
    if (JOINER_WORDS.has(word)) joined = true;
    else if (GRAMMAR_WORDS.has(word)) continue;
    else if (isNegator(word, words[at + 1])) {
      negated = true;
      if (CANNOT_WORDS.has(word)) no = CANNOT_TERM;
    }
    else if ((FILLER_WORDS.has(word) || WEAK_WORDS.has(word)) && !(asFix && actionTermsOf(word).length > 0)) small.push(termOf(word, asFix));
    else telling.push(termOf(word, asFix));
  }
  const few = new Set(telling).size < 2 - (negated ? 1 : 0) || telling.every((t) => STATE_STEMS.has(t));
  const required = [...new Set([...(negated ? [no] : []), ...telling, ...(few ? small : [])])];
  const optional = few ? [] : [...new Set(small)].filter((t) => !required.includes(t));
  if (required.length === 0 || (required.length === 1 && negated)) return null;
  return { required: required.slice(0, 12), optional: optional.slice(0, 6), joined };
}
