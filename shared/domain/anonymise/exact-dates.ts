import { allMatches } from './all-matches';
import { MONTH_PATTERN, monthName, monthNumber } from './month-words';
import type { FindSpans, FoundSpan } from './personal-detail';

const YEAR = String.raw`(?:19|20)\d{2}`;
const SHORT_YEAR = String.raw`(?:${YEAR}|['’]\d{2})`;
const DAY = String.raw`(?:3[01]|[12]\d|0?[1-9])`;
const ORDINAL = String.raw`${DAY} ?(?:st|nd|rd|th|er|º)`;
const ORDINAL_WORD =
  '(?:(?:twenty|thirty)[- ](?:first|second|third|fourth|fifth|sixth|seventh|eighth|ninth)|first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|eleventh|twelfth|thirteenth|fourteenth|fifteenth|sixteenth|seventeenth|eighteenth|nineteenth|twentieth|thirtieth)';
const MONTH = String.raw`(?<month>${MONTH_PATTERN})(?![\p{L}\p{N}])\.?`;
const OF = String.raw`(?:[ -]?(?:of|de|di) | ?[-./]? ?)`;

const ISO = new RegExp(String.raw`(?<![\w.-])${YEAR}([-/.])(?:1[0-2]|0?[1-9])\1${DAY}(?![\d]|[.-]\d)`, 'gu');
const CUED_COMPACT = new RegExp(String.raw`\b(?:dated?|on|of|am|le)[ :]{1,2}(?<it>${YEAR}(?:1[0-2]|0[1-9])(?:3[01]|[12]\d|0[1-9]))(?!\w)`, 'dgiu');
const NUMERIC = new RegExp(String.raw`(?<![\w./-])${DAY}(?<sep>[-/.]|\. )${DAY}\k<sep>(?:${YEAR}|\d{2})(?![\w%]|[./-]\d| ?(?:V|W|A|Hz|volts?|pins?|ohms?)\b)`, 'gu');
const DAY_MONTH = new RegExp(String.raw`(?<![\p{L}\p{N}.,/-])(?:${ORDINAL}|${DAY}\.?|${ORDINAL_WORD})${OF}${MONTH}(?:[ ,./-]{0,2}(?:de |of )?${SHORT_YEAR}(?!\d))?`, 'giu');
const MONTH_DAY = new RegExp(String.raw`(?<![\p{L}\p{N}])${MONTH}[ -](?:the )?(?:${ORDINAL}|${ORDINAL_WORD}|${DAY})(?![\p{L}\p{N}%]|[.,/]\d)(?:,? ?${SHORT_YEAR}(?!\d))?`, 'giu');
const YEAR_MONTH_DAY = new RegExp(String.raw`(?<![\w.-])${YEAR}[ -]${MONTH}[ -]${DAY}(?![\w])`, 'giu');
const FEAST = new RegExp(String.raw`\b(?:Christmas(?: Eve| Day)?|Boxing Day|New Year['’]?s (?:Eve|Day)|Heiligabend|Silvester)(?: of| in|,)? ${YEAR}`, 'giu');
const CUE_BEFORE = /(?:\b(?:on|dated?|since|until|till|from|before|after|by|am|vom|le|du)|:)\s*$/iu;
const COUNT_BEFORE = /\b(?:pins?|legs?|chips?|ics?|caps?|rows?|banks?|version|ver|v|rev|revision|lines?|steps?|ratio|taps?|positions?)\s*$/iu;

/** Day and month in either order, with a year; two-digit years only where the rest says that it is a date. */
function isNumericDate(text: string, before: string): boolean {
  const [first = '', second = '', year = ''] = text.split(/[-/.]\s?/u);
  if (Math.min(Number(first), Number(second)) > 12 || COUNT_BEFORE.test(before)) return false;
  if (year.length === 4 || CUE_BEFORE.test(before)) return true;
  return first.startsWith('0') || second.startsWith('0') || (text.includes('/') && Math.max(Number(first), Number(second)) > 12 && Number(year) !== 48);
}

/** A month's name that is also a word, or is cut short, needs its capital, its year or an ordinal. */
function isWordedDate(text: string, before: string): boolean {
  if (COUNT_BEFORE.test(before)) return false;
  const [month = ''] = text.match(new RegExp(`(?<!\\p{L})(?:${MONTH_PATTERN})(?!\\p{L})`, 'iu')) ?? [];
  if (new RegExp(`${YEAR}|\\d ?(?:st|nd|rd|th)\\b`, 'iu').test(text)) return !/^(?:may|march) /u.test(text);
  if (/^\p{Lu}\p{Ll}/u.test(month)) return true;
  return month.length > 4 && month.toLowerCase() !== 'march' && month.toLowerCase() !== 'mars';
}

/** Dates to the day: ISO 8601, day/month/year in either order, and with the month in words. A month with its year is allowed. */
export const exactDates: FindSpans = (text) => {
  const where = (pattern: RegExp, isOne: (match: string, before: string) => boolean): FoundSpan[] =>
    allMatches(text, pattern, 'exact-date').filter(({ start, end }) => isOne(text.slice(start, end), text.slice(Math.max(0, start - 20), start)));
  return [
    ...where(ISO, () => true),
    ...allMatches(text, CUED_COMPACT, 'exact-date'),
    ...where(NUMERIC, isNumericDate),
    ...where(DAY_MONTH, isWordedDate),
    ...where(MONTH_DAY, isWordedDate),
    ...where(YEAR_MONTH_DAY, () => true),
    ...where(FEAST, () => true),
  ];
};

/** What may be said of a date: its month and year, as far as it is clear which of its numbers they are. */
export function monthOfDate(date: string): string {
  const [year] = date.match(/(?<!\d)(?:19|20)\d{2}/u) ?? [];
  const iso = /^\d{4}[-/.]?(\d{1,2})/u.exec(date)?.[1];
  const numeric = /^(\d{1,2})\D+(\d{1,2})\D/u.exec(date);
  const word = date.match(/\p{L}+/gu)?.find((part) => monthNumber(part) !== null);
  const [first, second] = numeric ? [Number(numeric[1]), Number(numeric[2])] : [0, 0];
  const month = word ? monthNumber(word) : iso ? Number(iso) : first > 12 || first === second ? second : second > 12 ? first : null;
  const name = month === null || month > 12 ? '' : monthName(month);
  return [name, year].filter(Boolean).join(' ') || '[date]';
}
