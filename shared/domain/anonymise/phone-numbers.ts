import { type CountryCode, parsePhoneNumberFromString } from 'libphonenumber-js/min';
import { allMatches } from './all-matches';
import type { FindSpans, FoundSpan } from './personal-detail';

/** Countries whose national way of writing begins with the trunk digit 0. */
const TRUNK_COUNTRIES: readonly CountryCode[] = ['GB', 'DE', 'FR', 'NL', 'AT', 'CH', 'BE', 'IT', 'IE', 'SE', 'FI', 'AU', 'NZ', 'JP', 'ZA', 'TR', 'IN', 'HR'];

const NOT_INSIDE = String.raw`(?<![\w.,+#$&@%/-])`;
/** What would make a number a measurement, or go on with it. */
const NO_UNIT = String.raw`(?![\w%]|[.,]\d| ?(?:[kMGmuµnp]?(?:V|A|W|F|H|Hz|Ω|R|B)|[kM]?ohms?|volts?|baud|bytes?|pins?|rpm|MHz|kHz)\b)`;
const INTERNATIONAL = new RegExp(`${NOT_INSIDE}\\(?\\+ ?[1-9]\\d{0,2}\\)?(?:[ ./-]{0,2}\\(?\\d{1,5}\\)?){2,6}${NO_UNIT}`, 'gu');
const DIALLED_OUT = new RegExp(`${NOT_INSIDE}00[ -]?[1-9]\\d{0,2}(?:[ ./-]{0,2}\\(?\\d{1,5}\\)?){2,6}${NO_UNIT}`, 'gu');
const TRUNK = new RegExp(`${NOT_INSIDE}(?:\\(0\\d{1,5}\\)|0\\d{1,10})(?:[ ./-]{1,2}\\d{1,8}){0,5}${NO_UNIT}`, 'gu');
const NORTH_AMERICA = new RegExp(`${NOT_INSIDE}(?:1[ .-])?(?:\\([2-9]\\d{2}\\) ?|[2-9]\\d{2}[ .-])\\d{3}[ .-]\\d{4}${NO_UNIT}`, 'gu');
/** The range kept for fiction: no part number is written so. */
const FICTION = new RegExp(`${NOT_INSIDE}555[-. ]\\d{4}${NO_UNIT}`, 'gu');
const CUE_WORDS = String.raw`tele?(?:phone|fon|foon|fono|fonnummer)?|teléfono|tlf|tfno|tfn|phone|ph|tél(?:éphone)?|mob(?:ile|iel|il|iltelefon)?|móvil|cell(?:phone|ulare)?|cellphone|handy(?:nummer)?|natel|gsm|portable|fax|hotline|helpline|landline|fest(?:netz|net)|messenger|(?:contact|phone|telephone|telefon|daytime|evening|home|work|office|service|customer) ?(?:no|nr|number|nummer)|rufnummer|nummer|numéro|número|(?:my|his|her|their|shop's|our|owner's) number|call(?:ed|ing)?|ring|rang|text|sms|dial(?:led)?|anruf(?:en)?|ruf|ruft|appele[rz]|appelle|llam(?:ar|e|a|en)|chiam(?:are|a|ate)|bel(?:len)?|ligar|ring(?:a|e)?`;
const CUE_LINK = String.raw`(?: (?:me|him|her|us|them|no|nr|number|is|was|on|at|to|under|unter|au|al|el|a|an|mich|naar|op|moi|le|il|the|shop|office|für|for|parts|service|repairs|bench|workshop|owner|mobile|nummer))`;
const CUE = String.raw`(?<!\p{L})(?:${CUE_WORDS})(?:'s|’s)?${CUE_LINK}{0,4}[.:=#]{0,2} {0,2}(?:no\.? ?)?`;
const CUED = new RegExp(`${CUE}(?<it>\\(?\\+?\\d(?:[ ()./–-]{0,3}\\d){5,14})${NO_UNIT}`, 'dgiu');
/** Words after a number that somebody answers. */
const ASKED_AFTER = new RegExp(
  `${NOT_INSIDE}(?<it>\\(?\\d(?:[ ()./-]{0,2}\\d){8,11}),?(?= \\(?(?:preguntar|ask for|evenings?|after (?:six|seven|\\d)|mobile|bellen|anrufen|rufen|fragen|ab \\d+ uhr|office hours|daytime|weekdays|text only|text first|gsm|no texts|le soir|demander|chiedere|ore |por las tardes|'s avonds|abends|werktags|and ask|and leave|is (?:his|her|my|their|the shop)|rings? out|answers?)(?!\\p{L}))`,
  'dgiu',
);
/** A dash, a dot or blanks of another width between the digits, as word processors and labels have them. */
const plainSigns = (text: string) => text.replaceAll(/[\u00a0\u2009\u202f]/gu, ' ').replaceAll(/[\u2010-\u2015]/gu, '-');

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
export const phoneNumbers: FindSpans = (written) => {
  const text = plainSigns(written);
  const where = (pattern: RegExp, isOne: (text: string) => boolean): FoundSpan[] =>
    allMatches(text, pattern, 'phone-number').filter(({ start, end }) => isOne(text.slice(start, end)));
  return [
    ...where(INTERNATIONAL, isInternational),
    ...where(DIALLED_OUT, (match) => isInternational(match) && !isBenchColumn(match)),
    ...where(TRUNK, isNational),
    ...where(NORTH_AMERICA, (match) => parsePhoneNumberFromString(match, 'US')?.isPossible() === true),
    ...where(FICTION, () => true),
    ...where(CUED, (match) => !/^[01 ]+$/u.test(match) && !/0{6}/u.test(match)),
    ...where(ASKED_AFTER, (match) => !isBenchColumn(match)),
  ];
};
