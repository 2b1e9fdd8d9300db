import { allMatches } from './all-matches';
import type { FindSpans } from './personal-detail';

const NUMBER_WORD = String.raw`(?:numbers?|numero|número|nummer|num|nos?|nr|#|№|n[°º])`;
/** What a number belongs to that only one machine, order or customer has. */
const OWNED = [
  'serial|serials|ser|chassis|machine|unit|production|manufacturing|factory|fabrication|warranty|guarantee|licen[cs]e|registration|reg|property|asset|inventory|inventar|service|identification',
  'order|invoice|tracking|customer|ticket|auction|item|receipt|repair job|repair|job|booking|consignment|parcel|rma|case ref|membership|member|client|account|docket|worksheet|loan|policy|kunden|auftrags|rechnungs|bestell|geräte|maschinen|inventar|garantie',
].join('|');
const CUE = [
  String.raw`(?:${OWNED})[ .-]{0,2}(?:(?:id|ref|tag|card)\.? ?)?${NUMBER_WORD}`,
  String.raw`ser\.?|ser ?#|serial ?[:#=]|serials`,
  String.raw`s ?[./] ?n[oº°]?|sn|s\/no`,
  String.raw`(?:serien|serie|serienr|geräte|fabrik(?:ations)?|fabrieks?|werk|werks|maschinen|produktions|inventar|tillverknings|tilverknings)[ -]?(?:nummer|nr|no)`,
  String.raw`(?:numéro|numero|número|num|núm|no|n°|nº|n|nr)\.? ?(?:de |di |da )?(?:série|serie|matricola|fabrication|fabricación|chassis)`,
  String.raw`nr\.? (?:seryjny|fabryczny)|numer seryjny|sériové číslo|výrobní číslo|sarjanumero|sorozatszám|seri no|matricola|matricule`,
  String.raw`(?:asset|inventory|service|property) tag|imei|invoice|rechnung|facture|rma`,
].join('|');
const WHERE = String.raw`(?: (?:on|of|from|under|inside|at|auf|sur|unter)(?: (?:the|this|my|his|her|it|its|that|dem|der|le|la|one|mine))?(?: (?:back|bottom|base|underside|rear|label|sticker|plate|lid|case|board|unit|machine|one|box|monitor|console|tag|side|chassis|front|keyboard|drive|donor|other|second|first|old|typenschild|plaque)){0,3})`;
const SAYS = String.raw`(?:(?: ?,)? (?:is|was|are|were|reads?|ending(?: in| with)?|ends(?: in| with)?|starts(?: with)?|starting(?: with)?|begins(?: with)?|lautet|ist|says|shows|es|est|è|of|like|being|number|no\.?)(?![\p{L}\p{N}]))`;
const VALUE = String.raw`[A-Z0-9](?:[A-Z0-9]|[-./–_](?=[A-Z0-9])| ?[-/–] ?(?=\d)| (?=\d{2,})| (?=[A-Z]{1,2}\d{3,}|[A-Z]{1,2}(?![A-Z\p{Ll}])(?<=\d [A-Z]{1,2}))){2,28}`;
const AFTER_CUE = String.raw`[.:]?${WHERE}?${SAYS}{0,2}[ :#=.–-]{0,4}(?:no\.? ?)?[#"'“‘(\[]{0,2}`;
const CUED = new RegExp(`(?<![\\p{L}\\p{N}/])(?:${CUE})(?![\\p{L}])${AFTER_CUE}(?<it>${VALUE})(?![\\p{L}\\p{N}]| ?dB)`, 'dgiu');
/** "serial" alone also names ports and data: what follows must not be a speed or a part. */
const BARE = new RegExp(
  `(?<![\\p{L}\\p{N}/-])serial(?![\\p{L}])(?<between>${WHERE}?${SAYS}{0,2}[ :#=.,–-]{0,3}["'“(\\[]?)(?<it>${VALUE})(?![\\p{L}\\p{N}]| ?(?:baud|bps|bits?|Hz|kHz|bytes?|kbit|MHz|V|ohms?|pins?)\\b)`,
  'dgiu',
);
/** "004417 and 004418": what goes on after a number just named. */
const FURTHER = /(?<=(?:serials|serial numbers|s\/ns|serial nos\.?)[ :]{1,2}[A-Z0-9-]{4,16}(?:, | and | & | und | et ))(?<it>[A-Z0-9-]*\d{3}[A-Z0-9-]*)/dgiu;
const STAMPED = /(?<!\p{L})(?:stamped|engraved|etched|inscribed|scratched|riveted plate|rating plate|type ?plate|typenschild|plaque)(?: (?:with|reads?|says|into|in|on|the|no|nr|number|it|is|base|:)){0,3}[.:]? ?#?(?<it>(?=[A-Z/-]*\d[\dA-Z/-]*\d{3})[A-Z0-9][A-Z0-9/-]{4,16})(?![\p{L}\p{N}])/dgiu;
/** Standard parts after "SN": the letters are the beginning of a part number. */
const PART = /^(?:54\/)?(?:(?:54|74)[A-Z]*\d{2,5}[A-Z]*|\d{2}[A-Z]{1,3}\d{2,4}|7\d{3}|4\d{3}|6\d{3}|8\d{3}|16\d{3}|2N\d{3,4}|1N\d{3,4})$/iu;
const SPEED = /^(?:75|110|150|300|600|1200|2400|4800|9600|19200|38400|57600|115200)$/u;

/** "EEPROM 24C02" is a word and a part. */
const startsLikeNumber = (value: string) => !/^\p{L}{4,}(?: |$)/u.test(value);
const digitsIn = (value: string) => value.match(/\d/gu)?.length ?? 0;

/** Serial, asset, order and ticket numbers: signs with at least three digits after words that say what they are. */
export const serialNumbers: FindSpans = (text) => {
  const cued = allMatches(text, CUED, 'serial-number').filter(({ start, end }) => {
    const value = text.slice(start, end);
    const isLogicPart = /^(?:54|74)[A-Z]*\d{2,5}[A-Z]*$/iu.test(value);
    const isCount = /^\d{1,3}$/u.test(value) && /(?:order|invoice|unit no|job no)\W*$/iu.test(text.slice(Math.max(0, start - 10), start));
    return digitsIn(value) >= 3 && !isLogicPart && !isCount && !SPEED.test(value) && startsLikeNumber(value);
  });
  const bare = allMatches(text, BARE, 'serial-number').filter(({ start, end }) => {
    const value = text.slice(start, end);
    const plain = /serial $/iu.test(text.slice(Math.max(0, start - 7), start));
    if (plain && /^[1-9]\d{2}$/u.test(value)) return false;
    return digitsIn(value) >= 3 && startsLikeNumber(value) && !SPEED.test(value) && !(plain && PART.test(value));
  });
  return [...cued, ...bare, ...allMatches(text, FURTHER, 'serial-number'), ...allMatches(text, STAMPED, 'serial-number')];
};
