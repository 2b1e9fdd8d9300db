import { type CountryCode, parsePhoneNumberFromString } from 'libphonenumber-js/min';
import { allMatches } from './all-matches';
import type { FindSpans, FoundSpan } from './personal-detail';

/** Countries whose national way of writing begins with the trunk digit 0. */
const TRUNK_COUNTRIES: readonly CountryCode[] = ['GB', 'DE', 'FR', 'NL', 'AT', 'CH', 'BE', 'IT', 'IE', 'SE', 'FI', 'AU', 'NZ', 'JP', 'ZA'];

const NOT_INSIDE = String.raw`(?<![\w.,+#$&@%/-])`;
/** What would make a number a measurement, or go on with it. */
const NO_UNIT = String.raw`(?![\w%]|[.,]\d| ?(?:[kMGmuµnp]?(?:V|A|W|F|H|Hz|Ω|R|B)|[kM]?ohms?|volts?|baud|bytes?|pins?|rpm|MHz|kHz)\b)`;
const INTERNATIONAL = new RegExp(`${NOT_INSIDE}\\(?\\+ ?[1-9]\\d{0,2}\\)?(?:[ ./-]{0,2}\\(?\\d{1,5}\\)?){2,6}${NO_UNIT}`, 'gu');
const DIALLED_OUT = new RegExp(`${NOT_INSIDE}00[ -]?[1-9]\\d{0,2}(?:[ ./-]{0,2}\\(?\\d{1,5}\\)?){2,6}${NO_UNIT}`, 'gu');
const TRUNK = new RegExp(`${NOT_INSIDE}(?:\\(0\\d{1,5}\\)|0\\d{1,10})(?:[ ./-]{1,2}\\d{1,8}){0,5}${NO_UNIT}`, 'gu');
const NORTH_AMERICA = new RegExp(`${NOT_INSIDE}(?:1[ .-])?(?:\\([2-9]\\d{2}\\) ?|[2-9]\\d{2}[ .-])\\d{3}[ .-]\\d{4}${NO_UNIT}`, 'gu');
/** The range kept for fiction: no part number is written so. */
const FICTION = new RegExp(`${NOT_INSIDE}555[- ]01\\d{2}${NO_UNIT}`, 'gu');
const CUE = String.raw`\b(?:tele?(?:phone|fon)?|phone|tél(?:éphone)?|mob(?:ile)?|cell|handy|fax|hotline|landline|call(?: me| him| her| us)?|ring(?: me| him| her| us)?|text(?: me)?|sms|dial)(?: (?:no|nr|number|is|was|on|at|under|unter|au))*[.:]{0,2} {0,2}(?:me on |on |at )?`;
const CUED = new RegExp(`${CUE}(?<it>\\(?\\+?\\d(?:[ ()./-]{0,2}\\d){5,14})${NO_UNIT}`, 'dgiu');

const digitsOf = (text: string) => text.replaceAll(/\D/gu, '');

function isInternational(text: string): boolean {
  const digits = digitsOf(text).replace(/^00/u, '');
  const number = parsePhoneNumberFromString(`+${digits}`) ?? parsePhoneNumberFromString(`+${digits.replace(/^(\d{1,3}?)0/u, '$1')}`);
  return digits.length >= 8 && number?.isPossible() === true;
}

/** Binary words, hexadecimal addresses in columns and long zeros look like numbers that can be dialled. */
const isBenchColumn = (text: string) => /^[01 ]+$/u.test(text) || /^(?:\d{4} )+\d{4}$/u.test(text) || /^(?:\d\d ){5,}\d\d$/u.test(text) || /0{6}/u.test(text);

/** Numbers kept for fiction in Britain: the library knows that nobody has them. */
const UNASSIGNED = /^0(?:1632960|7700900|306999|8081570|909879)/u;

function isNational(text: string): boolean {
  const digits = digitsOf(text);
  if (digits.length < 9 || digits.length > 12) return false;
  if (isBenchColumn(text) && !/^0[1-9](?: \d\d){4}$/u.test(text)) return false;
  if (UNASSIGNED.test(digits)) return true;
  return TRUNK_COUNTRIES.some((country) => parsePhoneNumberFromString(text, country)?.isValid() === true);
}

/** Phone numbers with a country code, with a trunk digit, in the North American form, or after words such as "call me on". */
export const phoneNumbers: FindSpans = (text) => {
  const where = (pattern: RegExp, isOne: (text: string) => boolean): FoundSpan[] =>
    allMatches(text, pattern, 'phone-number').filter(({ start, end }) => isOne(text.slice(start, end)));
  return [
    ...where(INTERNATIONAL, isInternational),
    ...where(DIALLED_OUT, (match) => isInternational(match) && !isBenchColumn(match)),
    ...where(TRUNK, isNational),
    ...where(NORTH_AMERICA, (match) => parsePhoneNumberFromString(match, 'US')?.isPossible() === true),
    ...where(FICTION, () => true),
    ...where(CUED, () => true),
  ];
};
