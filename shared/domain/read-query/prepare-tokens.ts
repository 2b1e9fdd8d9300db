import { actionTermsOf } from './fix-words';
import type { Lexicon } from './lexicon';
import { isNegator } from './phrase-terms';
import { normalWord, stemOf, twinOf } from './spelling';
import { stateClassesOf } from './state-words';
import { CANNOT_TERM, NO_TERM, OTHER_TERM, type RawToken, type Token, type TokenRole, type WeightedTerm } from './token';
import {
  BREAK_WORDS,
  CANNOT_WORDS,
  DURATION_WORDS,
  FILLER_WORDS,
  JOINER_WORDS,
  OTHER_WORDS,
  PASSED_MARKS,
  WEAK_WORDS,
} from './word-classes';

/** How much a corrected word is worth beside one that was written right. */
const CORRECTED_WEIGHT = 0.88;

/** Corrections per text; words beyond are taken as written, so that a page of noise stays quick. */
const MOST_CORRECTIONS = 120;

/** Turns raw tokens into tokens with roles and terms; slips corrected, run-together words split, hyphenated ones joined. */
export function prepareTokens(raw: readonly RawToken[], text: string, lexicon: Lexicon): Token[] {
  const whole = joinParts(raw, lexicon);
  const tokens: Token[] = [];
  const seen = new Map<string, string | null>();
  for (const [at, token] of whole.entries()) {
    if (token.mark) {
      const mark = markToken(token, text);
      if (mark !== null) tokens.push(mark);
      continue;
    }
    const next = whole[at + 1]?.word;
    const word = token.word === 'none' && next === 'of' ? 'no' : normalWord(token.word);
    if (token.reading !== null && token.reading.unit === null && next !== undefined && DURATION_WORDS.has(next)) continue;
    if (token.reading !== null) {
      tokens.push({
        start: token.start,
        end: token.end,
        word,
        role: 'number',
        reading: token.reading,
        terms: numberTerms(word, text[token.start]),
        known: true,
      });
      continue;
    }
    const before = tokens.at(-1);
    const split = isKnown(word, lexicon, next) ? null : splitToken(token, word, lexicon);
    if (split !== null) tokens.push(...split);
    else if (word === 'clean' && before?.role === 'content')
      tokens.push({
        ...wordToken(token, word, next, { lexicon, correct: () => null }),
        terms: [{ term: stemOf(word), weight: 1 }],
      });
    else tokens.push(wordToken(token, word, next, { lexicon, correct: (w) => correctOnce(w, lexicon, seen) }));
  }
  return tokens;
}

function correctOnce(word: string, lexicon: Lexicon, seen: Map<string, string | null>): string | null {
  const kept = seen.get(word);
  if (kept !== undefined) return kept;
  const found = seen.size < MOST_CORRECTIONS ? lexicon.correct(word) : null;
  seen.set(word, found);
  return found;
}

function isKnown(word: string, lexicon: Lexicon, next?: string): boolean {
  return (
    lexicon.has(word) || roleOf(word, next) !== 'content' || stateClassesOf(word).length > 0 || actionTermsOf(word).length > 0
  );
}

const ADVERB = /^\p{L}{3,}ly$/u;

function roleOf(word: string, next: string | undefined): TokenRole {
  if (isNegator(word, next)) return 'negator';
  if (BREAK_WORDS.has(word)) return 'break';
  if (JOINER_WORDS.has(word)) return 'joiner';
  if (WEAK_WORDS.has(word)) return 'weak';
  return FILLER_WORDS.has(word) ? 'filler' : 'content';
}

type Speller = { lexicon: Lexicon; correct: (word: string) => string | null };

function wordToken(raw: RawToken, word: string, next: string | undefined, { lexicon, correct }: Speller): Token {
  const place = { start: raw.start, end: raw.end, reading: null };
  const role = roleOf(word, next);
  if (role === 'negator') return { ...place, word, role, terms: noTerms(word), known: true };
  const direct = termsOf(word, 1);
  if (role !== 'content') return { ...place, word, role, terms: direct, known: true };
  if (lexicon.has(word)) return { ...place, word, role, terms: direct, known: true };
  return { ...place, word, role, terms: direct, known: false, ...correction(word, correct) };
}

/** For a word that the vocabulary does not have: the one it was meant to be, if a slip explains it. */
function correction(word: string, correct: (w: string) => string | null): Partial<Token> {
  const meant = correct(word);
  if (meant === null) return ADVERB.test(word) ? { role: 'filler', known: true } : {};
  const role = roleOf(meant, undefined);
  if (role === 'negator') return { word: meant, role, terms: noTerms(meant), known: true };
  return { word: meant, role, terms: termsOf(meant, CORRECTED_WEIGHT), known: true };
}

/** "Not" stands for "can't" a little less well than for itself. */
function noTerms(word: string): WeightedTerm[] {
  const cannot = CANNOT_WORDS.has(word);
  return [
    { term: NO_TERM, weight: cannot ? 0.85 : 1 },
    { term: CANNOT_TERM, weight: cannot ? 1 : 0.5 },
  ];
}

/** A bare number with a sign names a rail: "+12", "-5". */
function numberTerms(word: string, first: string | undefined): WeightedTerm[] {
  const signed = /^-?\d+$/.test(word) && (first === '+' || first === '-' || first === '−');
  return [{ term: word, weight: 1 }, ...(signed ? [{ term: `${word}v`, weight: 0.8 }] : [])];
}

/** "Composite out" is its output. */
const SHORT_FOR: Readonly<Record<string, string>> = { out: 'output' };

function termsOf(word: string, weight: number): WeightedTerm[] {
  const stems = new Set([stemOf(twinOf(word)), stemOf(word)]);
  const terms = [...stems].map((term) => ({ term, weight }));
  for (const action of actionTermsOf(word)) terms.push({ term: action, weight });
  if (OTHER_WORDS.has(word)) terms.push({ term: OTHER_TERM, weight });
  const longer = SHORT_FOR[word];
  if (longer !== undefined) terms.push({ term: stemOf(longer), weight: weight * 0.8 });
  return terms;
}

function markToken(raw: RawToken, text: string): Token | null {
  const mark = raw.word;
  const spaced = text[raw.start - 1] === ' ' && text[raw.end] === ' ';
  if (mark === '\n' || BREAK_WORDS.has(mark)) return marked(raw, '.', 'break');
  if (mark === '-' || mark === '–' || mark === '—' || mark === '•' || mark === '·')
    return spaced || mark === '—' ? marked(raw, ',', 'joiner') : null;
  if (/^(\.{2,}|…)$/.test(mark)) return marked(raw, ',', 'joiner');
  if (PASSED_MARKS.has(mark)) return null;
  return JOINER_WORDS.has(mark) ? marked(raw, mark, 'joiner') : null;
}

function marked(raw: RawToken, word: string, role: TokenRole): Token {
  return { start: raw.start, end: raw.end, word, role, reading: null, terms: [], known: true };
}

/** "re-seated" and "flat line" as one word where the vocabulary writes them so and not apart. */
function joinParts(raw: readonly RawToken[], lexicon: Lexicon): RawToken[] {
  const whole: RawToken[] = [];
  for (let at = 0; at < raw.length; at += 1) {
    const token = raw[at] as RawToken;
    const hyphen = raw[at + 1];
    const after = raw[at + 2];
    const glued = hyphen?.mark === true && hyphen.word === '-' && hyphen.start === token.end && after?.start === hyphen.end;
    const partner = glued ? after : hyphen;
    if (partner !== undefined && canJoin(token, partner, lexicon)) {
      whole.push({
        start: token.start,
        end: partner.end,
        word: isKnownGood(token, partner) ? 'known-good' : token.word + partner.word,
        mark: false,
        reading: null,
      });
      at += glued ? 2 : 1;
    } else whole.push(token);
  }
  return whole;
}

function isKnownGood(left: RawToken, right: RawToken): boolean {
  return left.word === 'known' && right.word === 'good';
}

function canJoin(left: RawToken, right: RawToken, lexicon: Lexicon): boolean {
  if (left.mark || right.mark || left.reading !== null || right.reading !== null) return false;
  if (isKnownGood(left, right)) return true;
  const joined = left.word + right.word;
  if (joined.length < 5 || !(lexicon.has(joined) || actionTermsOf(joined).length > 0)) return false;
  if (left.word === 're' || left.word === 'de') return true;
  return !(isKnown(left.word, lexicon) && isKnown(right.word, lexicon));
}

function splitToken(raw: RawToken, word: string, lexicon: Lexicon): Token[] | null {
  if (word.length !== raw.end - raw.start) return null;
  const parts = lexicon.split(word);
  if (parts === null) return null;
  const middle = raw.start + parts[0].length;
  const speller: Speller = { lexicon, correct: () => null };
  return [
    { ...wordToken({ ...raw, end: middle }, parts[0], parts[1], speller), known: true },
    { ...wordToken({ ...raw, start: middle }, parts[1], undefined, speller), known: true },
  ];
}
