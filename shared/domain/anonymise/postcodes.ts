import { allMatches } from './all-matches';
import type { FoundSpan } from './personal-detail';
import { PLACE_NAMES } from './place-names';
import { matchesOf } from '../text/matches-of';

const CAP = String.raw`\p{Lu}[\p{Ll}'’]+(?:-\p{Lu}\p{Ll}+)*`;
/** Letters before the number in a British postcode (the public list of postcode areas). */
const AREAS =
  'AB|AL|B|BA|BB|BD|BH|BL|BN|BR|BS|BT|CA|CB|CF|CH|CM|CO|CR|CT|CV|CW|DA|DD|DE|DG|DH|DL|DN|DT|DY|E|EC|EH|EN|EX|FK|FY|G|GL|GU|GY|HA|HD|HG|HP|HR|HS|HU|HX|IG|IM|IP|IV|JE|KA|KT|KW|KY|L|LA|LD|LE|LL|LN|LS|LU|M|ME|MK|ML|N|NE|NG|NN|NP|NR|NW|OL|OX|PA|PE|PH|PL|PO|PR|RG|RH|RM|S|SA|SE|SG|SK|SL|SM|SN|SO|SP|SR|SS|ST|SW|SY|TA|TD|TF|TN|TQ|TR|TS|TW|UB|W|WA|WC|WD|WF|WN|WR|WS|WV|YO|ZE';
const BRITISH_CODE = new RegExp(`(?<![\\p{L}\\p{N}.,/-])(?:${AREAS})\\d[\\dA-Z]? (?!\\d(?:UF|NF|PF|MH|UH|NH|VA|PN|NP|SB|SD|NA|HZ|BY)\\b)\\d[ABD-HJLNP-UW-Z]{2}(?![\\p{L}\\p{N}])`, 'gu');
const US_STATE =
  'A[KLRZ]|C[AOT]|D[CE]|FL|GA|HI|I[ADLN]|K[SY]|LA|M[ADEINOST]|N[CDEHJMVY]|O[HKR]|PA|RI|S[CD]|T[NX]|UT|V[AT]|W[AIVY]';
const US_CODE = new RegExp(`${CAP}(?: ${CAP}){0,2},? (?:${US_STATE}) \\d{5}(?:-\\d{4})?(?![\\p{L}\\p{N}])`, 'gu');
const CONTINENTAL_CODE = new RegExp(`(?<![\\p{L}\\p{N}.,/-])(?:(?:D|F|A|CH|B|NL|I|E)-\\d{4,5}|(?<=[\\d\\p{Ll}.], )\\d{5}) ${CAP}(?: ${CAP})?`, 'gu');
const US_CODE_AFTER_NAME = new RegExp(`${CAP}(?: ${CAP})?, (?:${CAP})(?: ${CAP})? \\d{5}(?:-\\d{4})?(?![\\p{L}\\p{N}])`, 'gu');
const CANADIAN_CODE = /(?<![\p{L}\p{N}.,/-])[ABCEGHJ-NPRSTVXY]\d[ABCEGHJ-NPRSTV-Z] \d[ABCEGHJ-NPRSTV-Z]\d(?![\p{L}\p{N}])/gu;
/** After words that name it any code is one. */
const CUED_CODE = /(?<!\p{L})(?:zip(?: ?code)?|post ?code|postal code|plz|postleitzahl|code postal|código postal|codice postale|c\.a\.p\.|postcode|postnummer)(?: (?:is|was|of))?[ :=]{1,3}(?<it>[A-Z]{1,2}\d[A-Z0-9]? ?\d[A-Z]{2}|[A-Z]{0,2}-?\d[A-Z0-9]{2,4}(?: ?[A-Z]{2}(?!\p{L})|-\d{3,4})?)(?![\p{L}\p{N}])/dgiu;
const CODE_AND_NAME = /(?<![\p{L}\p{N}.,/:$£€-])(?:\d{4,5}|\d{2}-\d{3}|\d{3} \d{2}|\d{4} ?[A-Z]{2}|\d{4}-\d{3}),? (?<name>\p{Lu}[\p{Ll}'’]+(?:[- ](?:(?:am|an der|sur|de|del|la|le|les|der|den)[- ])?\p{Lu}\p{Ll}+){0,2})/gu;

const places: ReadonlySet<string> = new Set(PLACE_NAMES.map((name) => name.toLowerCase()));
/** Places that are written otherwise in their own language, or whose names are words. */
const MORE_PLACES =
  /^(?:berlin|münchen|köln|wien|zürich|genève|milano|roma|torino|napoli|firenze|venezia|genova|paris|lyon|nice|tours|nancy|praha|warszawa|lisboa|sevilla|den haag|'s-gravenhage|bruxelles|antwerpen|gent|brugge|essen|halle|bath|reading|bern|basel|graz|linz)$/u;

function namesPlace(name: string): boolean {
  const lower = name.toLowerCase();
  const [first = ''] = lower.split(/[ ]/u);
  return [lower, first].some((part) => places.has(part) || MORE_PLACES.test(part));
}

/** Postcodes: British, North American and Dutch ones by their form, others beside the name of a place or after a word that names them. */
export function postcodes(text: string): FoundSpan[] {
  const besideName = matchesOf(text, CODE_AND_NAME)
    .filter(({ groups }) => namesPlace(groups?.name ?? ''))
    .map((match): FoundSpan => ({ kind: 'street-address', start: match.index, end: match.index + match[0].length, certainty: 'direct' }));
  const byForm = [BRITISH_CODE, US_CODE, US_CODE_AFTER_NAME, CANADIAN_CODE, CUED_CODE, CONTINENTAL_CODE].flatMap((pattern) => allMatches(text, pattern, 'street-address'));
  return [...byForm, ...besideName];
}
