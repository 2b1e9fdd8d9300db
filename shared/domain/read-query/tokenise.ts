import { parseReadingAt } from '../readings/parse-reading';
import type { RawToken } from './token';

const WORD = /[\p{L}\p{N}\p{M}_°]+(?:['’`´][\p{L}]{1,3}(?![\p{L}\p{N}]))?/uy;
const NUMBER_START = /[+\-−±]?\.?\d|o\.?l\b|over[ -]?l|over[ -]?r|open line|out of range|infinit|∞/iy;
const SPECIAL = /b\+(?![\w])|b[/&]w\b|w\/o\b|r\/w\b|i\/o\b|a\/v\b|n\/a\b|on\/off\b/iy;
const MARK = /\r?\n|\.{2,}|…|->|=>|→|[,;:.!?/&+=()[\]{}|–—•·-]/uy;
const WORD_CHARACTER = /[\p{L}\p{N}_]/u;

/**
 * Cuts a text into words, numbers with their units, and the marks that matter to a sentence.
 * Offsets index into `text`. Characters that are none of these (blanks, quotes, symbols) are skipped.
 * At most `limit` tokens are cut; `end` is where cutting stopped.
 */
export function tokenise(text: string, limit: number): { tokens: RawToken[]; end: number } {
  const tokens: RawToken[] = [];
  let at = 0;
  while (at < text.length && tokens.length < limit) {
    const token = tokenAt(text, at);
    if (token === null) {
      at += (text.codePointAt(at) ?? 0) > 0xffff ? 2 : 1;
      continue;
    }
    tokens.push(token);
    at = token.end;
  }
  return { tokens, end: at };
}

function tokenAt(text: string, at: number): RawToken | null {
  const special = matchAt(SPECIAL, text, at);
  if (special !== null && !continuesWord(text, at)) {
    return { start: at, end: at + special.length, word: special.toLowerCase().replace(/[/&]/, ''), mark: false, reading: null };
  }
  if (!continuesWord(text, at) && matchAt(NUMBER_START, text, at) !== null) {
    const reading = parseReadingAt(text, at);
    if (reading !== null) return { start: at, end: reading.end, word: readingWord(text, at, reading.end), mark: false, reading };
  }
  const word = matchAt(WORD, text, at);
  if (word !== null) return { start: at, end: at + word.length, word: word.toLowerCase(), mark: false, reading: null };
  const mark = matchAt(MARK, text, at);
  if (mark === null) return null;
  return { start: at, end: at + mark.length, word: mark.trim() === '' ? '\n' : mark, mark: true, reading: null };
}

/** A sign or digit right after a letter or digit belongs to a range or a name, not to a new number. */
function continuesWord(text: string, at: number): boolean {
  return at > 0 && WORD_CHARACTER.test(text[at - 1] ?? '');
}

/** "+5 V", "5 volts" and "5V" become one word, so that a rail's name is found however it is written. */
function readingWord(text: string, start: number, end: number): string {
  const reading = parseReadingAt(text, start);
  if (reading === null || reading.end !== end || reading.overload) return 'ol';
  return `${reading.value}${(reading.unit ?? '').toLowerCase()}`;
}

function matchAt(pattern: RegExp, text: string, at: number): string | null {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0] ?? null;
}
