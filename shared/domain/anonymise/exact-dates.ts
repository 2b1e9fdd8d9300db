import { allMatches } from './all-matches';
import { MONTH_PATTERN, monthName, monthNumber } from './month-words';
import type { FindSpans, FoundSpan } from './personal-detail';

const YEAR = String.raw`(?:19|20)\d{2}`;
const SHORT_YEAR = String.raw`(?:${YEAR}|['’]\d{2})`;
const DAY = String.raw`(?:3[01]|[12]\d|0?[1-9])`;
const ORDINAL = String.raw`${DAY}(?: ?(?:st|nd|rd|th|er|º|ª|°)|ste|de|e)(?!\p{L})`;
/** A day of the week before a date belongs to it. */
const WEEKDAY = String.raw`(?:(?:mon|tues?|wed(?:nes)?|thu(?:rs?)?|fri|sat(?:ur)?|sun)(?:day)?|(?:montag|dienstag|mittwoch|donnerstag|freitag|samstag|sonnabend|sonntag)s?|mo|di|mi|do|fr|sa|so|lundi|mardi|mercredi|jeudi|vendredi|samedi|dimanche|lunes|martes|miércoles|jueves|viernes|sábado|domingo|lunedì|martedì|mercoledì|giovedì|venerdì|sabato|domenica|maandag|dinsdag|woensdag|donderdag|vrijdag|zaterdag|zondag|måndag|tisdag|onsdag|torsdag|fredag|lördag|söndag)`;
const LED_IN = String.raw`(?:(?<![\p{L}\p{N}])${WEEKDAY}\.?,? )?(?:(?<![\p{L}])(?:the|den|dem|le|el|il) )?`;
const ORDINAL_WORD =
  '(?:(?:twenty|thirty)[- ]?(?:first|second|third|fourth|fifth|sixth|seventh|eighth|ninth)|first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|eleventh|twelfth|thirteenth|fourteenth|fifteenth|sixteenth|seventeenth|eighteenth|nineteenth|twentieth|thirtieth)';
const MONTH = String.raw`(?<month>${MONTH_PATTERN})(?![\p{L}\p{N}])\.?`;
const OF = String.raw`(?:(?: day)?[ -](?:of|de|di|in) | ?[-./]? ?)`;
const ROMAN_MONTH = '(?:x(?:i{0,2})|ix|iv|v(?:i{0,3})|i{1,3})';

const ISO = new RegExp(String.raw`(?<![\w.-])${YEAR}([-/.])(?:1[0-2]|0?[1-9])\1${DAY}(?:(?:T| (?=\d{1,2}:))\d{1,2}:\d{2}(?::\d{2})?Z?)?(?![\d]|[.-]\d)`, 'gu');
const WEEK_DATE = /(?<![\w.-])(?:19|20)\d{2}-W[0-5]\d(?:-[1-7])?(?!\w)/gu;
const COMPACT = /(?<![\p{L}\p{N}.$#-])(?:19[6-9]|20[0-3])\d(?:1[0-2]|0[1-9])(?:3[01]|[12]\d|0[1-9])(?:T\d{4,6}|[-_]\d{4,6})?(?![\p{L}\p{N}-]|[.,]\d| ?(?:Hz|[kM]?ohms?|bytes?|baud)(?!\p{L}))/gu;
const CAPITAL_COMPACT = new RegExp(String.raw`(?<![\p{L}\p{N}])${DAY}(?:JAN|FEB|MAR|APR|MAY|JUN|JUL|AUG|SEP|OCT|NOV|DEC|Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)(?:${YEAR}|\d{2})(?![\p{L}\p{N}])`, 'gu');
const ROMAN = new RegExp(String.raw`(?<![\w./-])${DAY}(?<sep>[-/.]|[.]? )${ROMAN_MONTH}\k<sep>${SHORT_YEAR}(?![\p{L}\p{N}])`, 'giu');
const EAST_ASIAN = /(?:\d{4}|(?:昭和|平成|令和)\d{1,2})年\d{1,2}月\d{1,2}日/gu;
const DAY_AND_MONTH = new RegExp(String.raw`(?<!\p{L})(?:am|vom|bis zum|seit dem|ab|den) (?<it>${DAY}\. ?(?:1[0-2]|0?[1-9])\.?)(?![\p{L}\p{N}]|[.,]\d| ?(?:V|Volt|A|Ohm)(?!\p{L}))`, 'dgiu');
const SLASHED_DAY = /(?<!\p{L})(?:died|failed|bought|fixed|repaired|started|opened|recapped|tested|arrived|sold|serviced|came back|back|again|since|until|dated?) (?:on |the )?(?<it>\d{1,2}\/\d{1,2})(?![\p{L}\p{N}"”″%]|[/.,]\d| (?:of|inch|turns?|W|V|A|scale|size|through|watts?|pins?)(?!\p{L}))/dgiu;
const CUED_COMPACT = new RegExp(String.raw`\b(?:dated?|on|of|am|le)[ :]{1,2}(?<it>${YEAR}(?:1[0-2]|0[1-9])(?:3[01]|[12]\d|0[1-9]))(?!\w)`, 'dgiu');
const NUMERIC = new RegExp(String.raw`(?:(?<![\p{L}\p{N}])${WEEKDAY}\.?,? )?(?<![\w./-])${DAY}(?<sep>[-/.]|\. )${DAY}\k<sep>(?:${YEAR}|\d{2})(?![\w%]|[./-]\d| ?(?:V|W|A|Hz|volts?|pins?|ohms?|k|taps?|ratio|mm|cm|inch)\b)`, 'giu');
const DAY_MONTH = new RegExp(String.raw`${LED_IN}(?<![\p{L}\p{N}.,/-])(?:${ORDINAL}|${DAY}\.?|${ORDINAL_WORD})${OF}${MONTH}(?:[ ,./-]{0,2}(?:de |of |del )?${SHORT_YEAR}(?!\d)|[-/.]\d{2}(?![\d.]))?`, 'giu');
const MONTH_DAY = new RegExp(String.raw`${LED_IN}(?<![\p{L}\p{N}])${MONTH},?[ -/](?:the |on the )?(?:${ORDINAL}|${ORDINAL_WORD}|${DAY})(?![\p{L}\p{N}%]|[.,/]\d)(?:[,/-]? ?${SHORT_YEAR}(?!\d)|[/-]\d{2}(?!\d))?`, 'giu');
const YEAR_MONTH_DAY = new RegExp(String.raw`(?<![\w.-])${YEAR}[ ,./-]{1,2}${MONTH}[ ./-]${DAY}(?:st|nd|rd|th)?(?![\w])`, 'giu');
const FEAST = new RegExp(String.raw`\b(?:Christmas(?: Eve| Day)?|Boxing Day|New Year['’]?s (?:Eve|Day)|Heilig(?:er )?abend|Silvester|Neujahr|Halloween|Thanksgiving(?: Day)?|Easter(?: Sunday| Monday)?|Good Friday|Whit(?:sun| Monday)|Pancake Day|Shrove Tuesday|Valentine['’]?s(?: Day)?|St\.? (?:Patrick|George|Andrew|David|Nicholas)['’]?s Day|Bonfire Night|Guy Fawkes(?: Night)?|Independence Day|Labou?r Day|Memorial Day|Mother['’]?s Day|Father['’]?s Day|May Day|All Saints['’]?(?: Day)?|[1-4]\. Advent|Ostern|Oster(?:sonntag|montag)|Pfingst(?:en|sonntag|montag)|Karfreitag|Nikolaus(?:tag)?|Rosenmontag|Noël|Pâques|Toussaint|Navidad|Nochebuena|Nochevieja|Reyes|Natale|Capodanno|Ferragosto|Pasqua|Sinterklaas|Koningsdag|Koninginnedag|Kerst(?:mis|avond)?)(?: of| in|,| day)?,? (?:${YEAR}|['’]\d{2})`, 'giu');
const CUE_BEFORE = /(?:\b(?:on|dated?|since|until|till|from|before|after|by|am|vom|le|du|el|il|op|dal|van|den|seit)|:)\s*$/iu;
const COUNT_BEFORE = /\b(?:firmware|release|build|software|rom|bios|os|dos|kernel|section|fig(?:ure)?|chapter|pages?|step|board|item|resistors?|capacitors?|sockets?|pads?|jumpers?|settings?|taps?|pins?|legs?|chips?|ics?|caps?|rows?|banks?|version|ver|v|rev|revision|lines?|steps?|ratio|taps?|positions?)\s*$/iu;

/** Day and month in either order, with a year; two-digit years only where the rest says that it is a date. */
function isNumericDate(text: string, before: string): boolean {
  const [first = '', second = '', year = ''] = text.match(/\d+/gu) ?? [];
  if (Math.min(Number(first), Number(second)) > 12 || COUNT_BEFORE.test(before)) return false;
  if (year.length === 4 || CUE_BEFORE.test(before)) return true;
  if (first.startsWith('0') || second.startsWith('0')) return true;
  const isLikelyYear = Number(year) >= 75 || Number(year) <= 35;
  return isLikelyYear && Number(first) !== 0 && Number(second) !== 0 && (!text.includes('-') || Math.max(Number(first), Number(second)) > 12);
}

const MONTH_ALONE = new RegExp(`(?<!\\p{L})(?:${MONTH_PATTERN})(?!\\p{L})`, 'iu');
const YEAR_OR_ORDINAL = new RegExp(`${YEAR}|\\d ?(?:st|nd|rd|th|er|ste|e|de|º)(?!\\p{L})|['’]\\d{2}|[-/.]\\d{2}$`, 'iu');

/** A month's name that is also a word, or is cut short, needs its capital, its year or an ordinal. */
function isWordedDate(text: string, before: string): boolean {
  if (COUNT_BEFORE.test(before)) return false;
  const [month = ''] = text.match(MONTH_ALONE) ?? [];
  if (YEAR_OR_ORDINAL.test(text)) return !/^(?:may|march) /u.test(text);
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
    ...[WEEK_DATE, COMPACT, CAPITAL_COMPACT, EAST_ASIAN, SLASHED_DAY].flatMap((pattern) => allMatches(text, pattern, 'exact-date')),
    ...where(ROMAN, () => true),
    ...where(DAY_AND_MONTH, () => true),
    ...where(FEAST, () => true),
  ];
};

/** What may be said of a date: its month and year, as far as it is clear which of its numbers they are. */
export function monthOfDate(date: string): string {
  const [year] = date.match(/(?<!\d)(?:19|20)\d{2}/u) ?? [];
  const iso = /^\d{4}[-/.年]?(\d{1,2})/u.exec(date)?.[1];
  const numeric = /^(\d{1,2})[^\d\p{L}]+(\d{1,2})(?!\d)/u.exec(date);
  const word = date.match(/\p{L}+/gu)?.find((part) => monthNumber(part) !== null);
  const [first, second] = numeric ? [Number(numeric[1]), Number(numeric[2])] : [0, 0];
  const month = word ? monthNumber(word) : iso ? Number(iso) : first > 12 || first === second ? second : second > 12 ? first : null;
  const name = month === null || month > 12 ? '' : monthName(month);
  return [name, year].filter(Boolean).join(' ') || '[date]';
}
