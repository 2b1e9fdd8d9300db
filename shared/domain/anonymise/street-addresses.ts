import { allMatches } from './all-matches';
import type { FindSpans, FoundSpan } from './personal-detail';

const CAP = String.raw`\p{Lu}[\p{Ll}'’]+(?:-\p{Lu}\p{Ll}+)*`;
const NUMBER = String.raw`(?<![\p{L}\p{N}.,/-])(?:(?:Flat|Unit|Apartment|Apt|Suite) \w{1,4},? )?\d{1,5}[a-zA-Z]?(?:[-/]\d{1,4})?`;
const KIND =
  'Street|Str|St|Road|Rd|Lane|Ln|Avenue|Ave|Av|Drive|Dr|Close|Court|Ct|Way|Place|Pl|Crescent|Cres|Terrace|Gardens|Gdns|Square|Sq|Boulevard|Blvd|Grove|Row|Mews|Hill|Walk|Parade|Rise|Green|Parkway|Pkwy|Highway|Hwy|Quay|Circle|Trail';
const ENGLISH = new RegExp(`${NUMBER},? (?<words>(?:(?:${CAP}|\\d{1,3}(?:st|nd|rd|th)|[NSEW]\\.?) ){1,4})(?:${KIND})(?![\\p{L}\\p{N}])\\.?`, 'gu');
const ENGLISH_LOWER = new RegExp(`${NUMBER} (?<words>(?:[\\p{L}'’]+ ){1,3})(?:street|road|avenue|crescent|boulevard)(?![\\p{L}\\p{N}])`, 'giu');
const UNNUMBERED = new RegExp(`\\b(?:live|lives|lived|house|home|shop|workshop|round|address|flat)(?: is| are)? (?:[a-z]+ )?(?:in|on|at|to|off)[: ] ?(?:the )?(?<it>(?:${CAP} ){1,3}(?:${KIND}))(?![\\p{L}\\p{N}])`, 'dgu');
const GERMAN = /(?<!\p{L})(?:(?:An? |Am |Im |In )?(?:de[rmn] )?(?:\p{Lu}[\p{Ll}ß]+[- ])?\p{Lu}?[\p{L}ß-]{2,30}(?:straße|strasse|str\.|Straße|Strasse|Str\.|weg|Weg|gasse|Gasse|allee|Allee|platz|Platz|damm|ufer|ring|Ring|straat|laan|plein|gracht|gatan|vägen|vej|gade)) ?\d{1,4} ?[a-z]?(?![\p{L}\p{N}.])/gu;
const ROMANCE =
  /(?<![\p{L}\p{N}])(?:\d{1,4}(?: ?(?:bis|ter|quater))?,? ?(?:rue|avenue|av\.|boulevard|bd|allée|chemin|impasse|place|quai|route|cours)(?= )(?: (?:de|du|des|la|le|les|l['’]\p{L}+|d['’]\p{L}+|\p{Lu}[\p{L}-]+)){1,6}|(?:Calle|Carrer|Avenida|Avda\.?|Plaza|Paseo|Via|Viale|Piazza|Corso|Rua|Travessa|Largo) (?:(?:de|del|della|dei|di|da|do|dos|la|las|los|el) ){0,3}\p{Lu}[\p{L}'’-]+(?: (?:de |del |della |di |da )?\p{Lu}[\p{L}'’-]+){0,3},? (?:n[.º°]? ?)?\d{1,4})(?!\p{L})/gu;
const BOX = /\b(?:P\.? ?O\.? ?Box|Postfach|Boîte postale|B\.?P\.?|Apartado|Post Office Box)(?: (?:no\.? )?|:)\d[\d ]{0,7}\b/giu;

/** Letters before the number in a British postcode (the public list of postcode areas). */
const AREAS =
  'AB|AL|B|BA|BB|BD|BH|BL|BN|BR|BS|BT|CA|CB|CF|CH|CM|CO|CR|CT|CV|CW|DA|DD|DE|DG|DH|DL|DN|DT|DY|E|EC|EH|EN|EX|FK|FY|G|GL|GU|GY|HA|HD|HG|HP|HR|HS|HU|HX|IG|IM|IP|IV|JE|KA|KT|KW|KY|L|LA|LD|LE|LL|LN|LS|LU|M|ME|MK|ML|N|NE|NG|NN|NP|NR|NW|OL|OX|PA|PE|PH|PL|PO|PR|RG|RH|RM|S|SA|SE|SG|SK|SL|SM|SN|SO|SP|SR|SS|ST|SW|SY|TA|TD|TF|TN|TQ|TR|TS|TW|UB|W|WA|WC|WD|WF|WN|WR|WS|WV|YO|ZE';
const BRITISH_CODE = new RegExp(`(?<![\\p{L}\\p{N}.,/-])(?:${AREAS})\\d[\\dA-Z]? (?!\\d(?:UF|NF|PF|MH|UH|NH|VA|PN|NP|SA|SB|SD|NA|AA|HZ|BY)\\b)\\d[ABD-HJLNP-UW-Z]{2}(?![\\p{L}\\p{N}])`, 'gu');
const US_STATE =
  'A[KLRZ]|C[AOT]|D[CE]|FL|GA|HI|I[ADLN]|K[SY]|LA|M[ADEINOST]|N[CDEHJMVY]|O[HKR]|PA|RI|S[CD]|T[NX]|UT|V[AT]|W[AIVY]';
const US_CODE = new RegExp(`${CAP}(?: ${CAP}){0,2},? (?:${US_STATE}) \\d{5}(?:-\\d{4})?(?![\\p{L}\\p{N}])`, 'gu');
const CONTINENTAL_CODE = new RegExp(`(?<![\\p{L}\\p{N}.,/-])(?:(?:D|F|A|CH|B|NL|I|E)-\\d{4,5}|(?<=[\\d\\p{Ll}.], )\\d{5}) ${CAP}(?: ${CAP})?`, 'gu');

/** Streets, post boxes and postcodes in the forms of English, German, Dutch, French, Spanish and Italian. */
export const streetAddresses: FindSpans = (text, known) => {
  const unlessKnown = (pattern: RegExp): FoundSpan[] =>
    [...text.matchAll(pattern)]
      .filter((match) => {
        const words = (match.groups?.words ?? '').toLowerCase().trim().split(' ');
        return !words.every((word) => known.has(word)) && !/^(?:of|on|in|the|from|at|to)$/u.test(words[0] ?? '');
      })
      .map((match) => ({ kind: 'street-address', start: match.index, end: match.index + match[0].length, certainty: 'direct' }));
  return [
    ...unlessKnown(ENGLISH),
    ...unlessKnown(ENGLISH_LOWER),
    ...[UNNUMBERED, GERMAN, ROMANCE, BOX, BRITISH_CODE, US_CODE, CONTINENTAL_CODE].flatMap((pattern) => allMatches(text, pattern, 'street-address')),
  ];
};
