import { STOP_WORDS } from './stop-words';
import { matchesOf } from '../text/matches-of';

/** One thing searched for: a word, or several that have to stand side by side, in lower case. */
export type SearchTerm = {
  words: readonly string[];
  /** Whether it was typed in quotes. */
  quoted: boolean;
  /** Whether it must not be there. */
  not: boolean;
  /** Whether it is still being typed: its last word may go on. */
  open: boolean;
};

/** Most terms of a search; what lies beyond is not looked at, so that a pasted page costs no more than a paragraph. */
export const TERMS_MAX = 24;
const PHRASE_WORDS_MAX = 12;
const WORD_LENGTH_MAX = 40;

/** A phrase in quotes (the closing one may be missing), or a run of anything but blanks and quotes. */
const PIECE = /(-?)"([^"]*)("?)|[^\s"]+/gu;
const WORD = /[\p{L}\p{N}][\p{L}\p{N}\p{M}]*/gu;

/**
 * Reads what was typed into a search box. Words in quotes stand side by side, and so do the parts of one with marks in
 * it ("known-good", "1.5V"); a hyphen before a word that begins with a letter, or before a quote, excludes it. Nothing
 * else is an operator: AND, NEAR, brackets and stars are words or nothing. Never throws.
 */
export function parseWords(text: string): SearchTerm[] {
  const typed = text.normalize('NFKC').replaceAll(/[“”„«»]/gu, '"').replaceAll(/[’`´]/gu, "'").toLowerCase();
  const terms: SearchTerm[] = [];
  for (const piece of matchesOf(typed, PIECE)) {
    if (terms.length >= TERMS_MAX) break;
    const [whole, , inQuotes] = piece;
    const quoted = inQuotes !== undefined;
    const not = /^-["\p{L}]/u.test(whole);
    const words = wordsIn(inQuotes ?? whole);
    const open = !quoted && piece.index + whole.length === typed.length && /[\p{L}\p{N}\p{M}]$/u.test(whole);
    if (words.length > 0) terms.push({ words, quoted, not, open });
  }
  const telling = terms.filter(isTelling);
  return telling.some((term) => !term.not) ? telling : terms;
}

/** Words of a text that can be searched for, in lower case; overlong ones are cut. */
export function wordsIn(text: string): string[] {
  const words = text.normalize('NFKC').toLowerCase().match(WORD) ?? [];
  return words.slice(0, PHRASE_WORDS_MAX).map((word) => word.slice(0, WORD_LENGTH_MAX));
}

function isTelling({ words }: SearchTerm): boolean {
  return words.length > 1 || !STOP_WORDS.has(words[0] ?? '');
}
