import { allMatches } from './all-matches';
import type { FindSpans, FoundSpan, KnownWords } from './personal-detail';
import { postcodes } from './postcodes';
import { matchesOf } from '../text/matches-of';

const CAP = String.raw`\p{Lu}[\p{Ll}'’]+(?:-\p{Lu}\p{Ll}+)*`;
const ROOM = String.raw`(?:(?:[Ff]lat|[Uu]nit|[Aa]partment|[Aa]pt\.?|[Ss]uite|[Rr]oom|[Ff]loor|[Bb]lock|[Ss]te\.?) ?#?\w{1,5}`;
const NUMBER = String.raw`(?<![\p{L}\p{N}.,/-])${ROOM}(?:,? | ?[-/] ?))?\d{1,5}[a-zA-Z]?(?:[-/–]\d{1,4}[a-zA-Z]?)?`;
const ROOM_AFTER = String.raw`(?:,? (?:${ROOM}|#\d{1,5}|No\.? \d{1,4})))?(?:,? [NSEW]{1,2}(?![\p{L}\p{N}]))?`;
/** Words for streets that are hardly ever anything else. */
const SURE_KIND =
  'Street|Str|St|Road|Rd|Lane|Ln|Avenue|Ave|Av|Crescent|Cres|Terrace|Terr|Gardens|Gdns|Boulevard|Blvd|Grove|Mews|Parkway|Pkwy|Highway|Hwy|Cottages?|Villas|Mansions|Maltings|Buildings|Almshouses|Croft|Wynd|Orchard|Esplanade|Promenade|Wharf|Quay|Quays|Farm|Vale|Meadows?|Heights|Estate';
const KIND = `${SURE_KIND}|Drive|Dr|Close|Court|Ct|Way|Place|Pl|Green|Square|Sq|Row|Hill|Walk|Parade|Rise|Circle|Cir|Trail|View|House|Yard|Park|Mill|Bank|Gate|End|Common|Brae|Drove|Chase|Heath|Approach|Arcade|Mount|Path|Passage|Ridge|Side|Wood|Pike|Loop|Cove|Trace|Point|[Pp]laza|Bend|Hollow|Alley|Field|Fields|Landing|Crossing|Turn|Garth|Fold|Dell|Glen|Spur|Run|Reach|Strand|Broadway|Embankment|Backs|Leas?|Barn|Lodge|Paddock|Paddocks|Copse|Spinney|Dene|Ride`;
const ENGLISH = new RegExp(`${NUMBER},? (?<words>(?:(?:the |The )?(?:${CAP}|St\\.|\\d{1,3}(?:st|nd|rd|th)|[NSEW]{1,2}\\.?) ){1,4})(?:${KIND})(?![\\p{L}\\p{N}])\\.?${ROOM_AFTER}`, 'gu');
const SURE_ENGLISH = new RegExp(`${NUMBER},? (?:(?:The )?${CAP} ){1,3}(?:Street|Str|St|Road|Rd|Lane|Ln|Avenue|Ave|Crescent|Terrace|Boulevard|Blvd)(?![\\p{L}\\p{N}])\\.?${ROOM_AFTER}`, 'gu');
const ENGLISH_LOWER = new RegExp(`${NUMBER} (?<words>(?:[\\p{L}'’]+ ){1,3})(?:street|road|avenue|crescent|boulevard|lane|terrace|rd|ave|blvd)(?![\\p{L}\\p{N}])`, 'giu');
const NAMED_HOUSE = new RegExp(`${NUMBER},? The (?:${CAP})(?: (?:${CAP}))?(?![\\p{L}\\p{N}])|(?<![\\p{L}\\p{N}])(?:The )?(?:${CAP} ){1,2}(?:House|Cottage|Farm|Lodge|Barn|Court|Mill|Forge|Rectory|Vicarage|Works|Yard|Hall|Bungalow),? (?:${CAP} ){1,3}(?:${SURE_KIND})(?![\\p{L}\\p{N}])|(?<![\\p{L}\\p{N}])The (?:Old )?(?:${CAP}),? (?:${CAP} ){1,2}(?:${SURE_KIND})(?![\\p{L}\\p{N}])|${ROOM}), (?:${CAP} ){1,3}(?:${KIND})(?![\\p{L}\\p{N}])`, 'gu');
const NUMBERED_ROAD = /(?<![\p{L}\p{N}.,/-])(?:\d{1,5} (?:Old )?(?:(?:State |County |US |Rural )?(?:Route|Rte\.?|Highway|Hwy|Road)|Avenue|Ave) [A-Z0-9]{1,4}|(?:County|State|Rural) (?:Road|Route|Highway|Rd) \d{1,4}(?:,? Box \d{1,5})?|R\.?R\.? ?#?\d{1,3},? Box \d{1,5}|\d{1,3}(?:st|nd|rd|th) (?:Avenue|Ave|Street|St)\.?(?: (?:and|&) \p{Lu}\p{Ll}+| \d{1,5})?|\d{2,5} Broadway)(?![\p{L}\p{N}])/gu;
const UNNUMBERED = new RegExp(`(?<![\\p{L}])(?:[Ii]n|[Oo]n|[Aa]t|[Tt]o|[Oo]ff|[Ff]rom|[Nn]ear|[Rr]ound|[Dd]own|[Uu]p|[Aa]long|[Oo]f|[Aa]ddress:?|[Ss]hop:?)(?: the)?:? (?:(?:corner|top|bottom|end) of )?(?<it>(?:${CAP} ){1,3}(?:Street|Road|Rd|Lane|Avenue|Ave|Crescent|Terrace|Gardens|Boulevard|Blvd|Grove|Mews|Close|Drive|St))(?![\\p{L}\\p{N}]| \\p{Lu}\\p{Ll})`, 'dgu');
const GERMAN_END = 'straße|strasse|str\\.|weg|gasse|allee|platz|damm|ufer|ring|hof|markt|graben|steig|stieg|kamp|chaussee|promenade|brücke|zeile|gärten|siedlung|wall|twiete|stra|straat|laan|plein|gracht|kade|singel|dijk|dreef|steeg|pad|gatan|vägen|gränd|vej|gade|allé|veien|gata|katu|tie|utca';
const HOUSE_NUMBER = String.raw`,? ?(?:Nr\.? ?)?\d{1,4}(?: ?[-–/] ?\d{1,4})?(?: ?[a-hA-H](?![\p{L}]))?(?:[-/ ](?:bis|hs|[IVX]{1,4}|[A-H]))?(?![\p{L}\p{N}]|[.,]\d)`;
const GERMAN = new RegExp(
  `(?<![\\p{L}-])(?:(?:An?|Am|Im|In) (?:de[rmn] )?)?(?:(?:\\p{Lu}[\\p{Ll}ß]+|St\\.|Dr\\.)[- ]){0,2}\\p{L}[\\p{L}ß-]{1,30}?(?:${GERMAN_END})${HOUSE_NUMBER}|(?<!\\p{L})(?:\\p{Lu}[\\p{Ll}ß]+[- ]){1,3}(?:Straße|Strasse|Str\\.|Weg|Gasse|Allee|Platz|Damm|Ufer|Ring|Straat|Laan|Plein|Gracht|Kade|Weg|Chaussee|Markt)${HOUSE_NUMBER}`,
  'gu',
);
const GERMAN_PLACE = new RegExp(
  `(?<!\\p{L})(?:Am|An der|An den|An dem|Auf dem|Auf der|Auf den|Im|In der|In den|Zum|Zur|Unter den|Hinter der|Hinter dem|Vor dem|Vor der|Bei der|Beim|Aan de|Op de|Op het|Achter de)(?: (?:alten|hohen|großen|kleinen|langen|neuen|oude|grote))? (?<words>\\p{Lu}[\\p{Ll}ß]+(?:-\\p{Lu}?\\p{Ll}+)?) \\d{1,3} ?[a-h]?(?![\\p{L}\\p{N}]|[.,]\\d| ?(?:V|Volt|mA|A|Ohm|kHz|Uhr|Jahr)(?!\\p{L}))`,
  'gu',
);
/** What stands on a board in the same form as a street: "Am Pin 14". */
const GERMAN_THINGS =
  /^(?:pin|anschluss|sockel|chip|widerstand|kanal|bus|port|steckplatz|bein|ausgang|eingang|stecker|test|schritt|jahr|teil|bank|punkt|transistor|kondensator|regler|diode|april|mai|juni|juli|august|september|oktober|november|dezember|januar|februar|märz|gatter|slot|kontakt|meter|spannung|platine|kapitel|alter|seite|zeile|spalte|track|block|sektor|register|bit|rev|version|modell|takt|cent|preis|schnitt|monat|tag|woche)$/iu;
const SMALL = "(?:de|du|des|la|le|les|del|della|delle|dei|degli|dello|di|da|do|dos|das|el|los|las|y|e|et|sur|en|aux|san|santa|the)";
const FRENCH_KIND = 'rue|avenue|av\\.?|ave|boulevard|bd|bld|boul\\.|allées?|chemin|ch\\.|impasse|place|pl\\.|quai|route|rte|cours|sentier|ruelle|faubourg|fg|résidence|hameau|voie|cité|esplanade|montée|côte|villa|clos|chaussée|sente|venelle';
const eitherCase = (words: string) => words.split('|').map((word) => `[${word[0]}${word[0]?.toUpperCase()}]${word.slice(1)}`).join('|');
const FRENCH = new RegExp(
  `(?<![\\p{L}\\p{N}])\\d{1,4}(?: ?(?:bis|ter|quater|[A-D]))?,? ?(?:${eitherCase(FRENCH_KIND)})(?= )(?: (?:de|du|des|la|le|les|aux?|sur|en|et|l['’]\\p{L}+|d['’]\\p{L}+|\\p{Lu}[\\p{L}-]+|[0-9]{1,2}-Septembre|\\d{1,2}(?=\\s\\p{L}))(?!\\p{L})){1,6}|(?<!\\p{L})(?:${eitherCase('rue|avenue|boulevard|impasse|allée|chemin|quai')})(?: (?:de|du|des|la|le|les|aux?)){0,3} ?(?:[ld]['’])?\\p{Lu}[\\p{L}-]+(?: \\p{Lu}[\\p{L}-]+){0,2}(?:,? ?(?:n°|no\\.?)? ?\\d{1,4})?`,
  'gu',
);
const ROMANCE_KIND = String.raw`C\/|[Cc]alle|Carrer|Cl\.|[Aa]venida|Avinguda|Avda\.?|Av\.|[Pp]laza|Pza\.?|Plaça|Paseo|Pº|Passeig|Ronda|Camino|Travesía|Glorieta|Carretera|Ctra\.?|Via|V\.le|Viale|Vicolo|[Pp]iazza|Piazzale|Piazzetta|P\.zza|[Cc]orso|C\.so|Largo|Strada|Contrada|Lungomare|Salita|Borgo|[Rr]ua|Travessa|Praça|Estrada|ul\.|al\.|os\.|pl\.|ulica|[Uu]lice`;
const ROMANCE = new RegExp(
  `(?<![\\p{L}\\p{N}])(?:${ROMANCE_KIND}) ?(?:${SMALL} |d['’]|dell['’]|l['’]){0,3}(?<words>\\p{Lu}[\\p{L}'’-]+(?: (?:${SMALL} ){0,2}\\p{Lu}[\\p{L}'’.-]+){0,3}| ?Mille),? ?(?:n[.º°]{0,2} ?|núm\\.? ?)?\\d{1,4}(?:\\/\\w{1,3}| ?[A-Ha-h](?!\\p{L}))?(?:, ?\\d{1,2}[º°ª](?: ?\\p{Lu}(?!\\p{L}))?)?(?![\\p{L}\\p{N}])`,
  'gu',
);
const BOX = /(?<![\p{L}\p{N}])(?:P\.? ?O\.? ?Box|Post(?:al)? ?Box|Postfach|Postbus|Postboks|Box(?= \d{3,5},)|Boîte postale|B\.?P\.?|Casella postale|C\.P\.|Caixa postal|Apartado(?: de correos| postal)?|Apdo\.?(?: de correos)?|Skr(?:ytka|\.) poczt(?:owa|\.)|Post Office Box|Private Bag|GPO Box)(?: (?:no?\.? |nr\.? |#)?|: ?)[A-Z]?\d[\d ]{0,7}(?!\w)/giu;

/** Streets and post boxes in the forms of English, German, Dutch, French, Spanish and Italian, and postcodes. */
export const streetAddresses: FindSpans = (text, known) => [
  ...wordsOfNames(text, [ENGLISH, ENGLISH_LOWER, ROMANCE], known),
  ...wordsOfNames(text, [GERMAN_PLACE], known).filter(({ start, end }) => !GERMAN_THINGS.test(/\p{Lu}[\p{Ll}ß]+(?= \d)/u.exec(text.slice(start, end))?.[0] ?? '')),
  ...[SURE_ENGLISH, NAMED_HOUSE, NUMBERED_ROAD, UNNUMBERED, GERMAN, FRENCH, BOX].flatMap((pattern) => allMatches(text, pattern, 'street-address')),
  ...postcodes(text),
];

/** Matches whose words are not all of the trade: "3 Data Row" is no street. */
function wordsOfNames(text: string, patterns: readonly RegExp[], known: KnownWords): FoundSpan[] {
  return patterns.flatMap((pattern) =>
    matchesOf(text, pattern)
      .filter((match) => {
        const words = (match.groups?.words ?? '').toLowerCase().trim().split(' ');
        return !words.every((word) => known.has(word)) && !/^(?:of|on|in|from|at|to)$/u.test(words[0] ?? '');
      })
      .map((match): FoundSpan => ({ kind: 'street-address', start: match.index, end: match.index + match[0].length, certainty: 'direct' })),
  );
}
