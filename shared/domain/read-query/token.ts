import type { WrittenReading } from '../readings/parse-reading';

/** What a token does in a sentence, before any vocabulary entry is looked for. */
export type TokenRole =
  | 'content'
  /** Carries no finding by itself: "the", "is", "a bit". */
  | 'filler'
  /** Says little without a neighbour: "signal", "line", "reads". */
  | 'weak'
  /** "no", "not", "without". */
  | 'negator'
  /** "and", "or", a comma, a slash: joins a list. */
  | 'joiner'
  /** "but", a full stop, a semicolon: ends a clause. */
  | 'break'
  | 'number';

/** One word, number or mark. `start` and `end` (exclusive) index into the original text. */
export type Token = {
  start: number;
  end: number;
  /** Normal form: lower case, British spelling, corrected where a slip was found. */
  word: string;
  role: TokenRole;
  reading: WrittenReading | null;
  /** Terms this token can stand for in a phrase, with how well it does so (0 to 1). */
  terms: readonly WeightedTerm[];
  /** False where the word occurs nowhere in the vocabulary. */
  known: boolean;
};

export type WeightedTerm = { term: string; weight: number };

/** A token as cut from the text, before its word is looked up. */
export type RawToken = { start: number; end: number; word: string; mark: boolean; reading: WrittenReading | null };

/** The term that every negator stands for. */
export const NO_TERM = '~no';
/** "Another", "a different", "a known good": something else was tried. */
export const OTHER_TERM = '!other';
/** What "can't" means beyond "not": "can't reset" is not "doesn't reset". */
export const CANNOT_TERM = '~cannot';
