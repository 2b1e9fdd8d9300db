import type { FoundSpan } from './personal-detail';
import { matchesOf } from '../text/matches-of';

const TITLE_WORD =
  'Mr|Mrs|Ms|Mx|Miss|Mister|Dr|Prof|Professor|Doctor|Doktor|Sir|Dame|Lady|Lord|Herrn|Herr|Frau|Fräulein|Monsieur|Madame|Mademoiselle|Mme|Mlle|Señora|Señorita|Señor|Sra|Sr|Don|Doña|Signora|Signore|Signor|Sig|Mevrouw|Meneer|Mevr|Dhr|Senhora|Senhor|Pani|Pan|Uncle|Aunt|Auntie|Grandpa|Grandma|Granddad|Grandad|Nana|Granny|Opa|Oma|Onkel|Tante|Oncle|Father|Sister|Brother|Pastor|Reverend|Rev|Captain|Capt|Sgt|Sergeant|Major|Colonel|Master';
const ANY_TITLE = `(?:${TITLE_WORD}|mr|mrs|ms|dr|prof|professor|doctor|herr|frau|monsieur|madame|mme|señora?|signora?|mevrouw|meneer|uncle|aunt|auntie|grandpa|grandma|grandad|granny|nana|captain|pastor)\\.?`;
const SURNAME = String.raw`(?:(?:O|D|L)['’])?(?:Mc|Mac|Fitz)?\p{Lu}\p{Ll}+(?:[-'’]\p{Lu}?\p{Ll}+(?<!['’]s))*`;
const TITLED = new RegExp(
  String.raw`(?<![\p{L}\p{N}])(?:${ANY_TITLE} (?:and|&|und|et|y|e|en|\+) )?(?:${ANY_TITLE} ){1,3}(?:\p{Lu}\.? ?){0,3}(?:(?:van|von|de|der|den|la|le|du|di|da|del|ter|ten|zu|al|el|bin) ){0,3}(?<name>${SURNAME})(?: ${SURNAME}){0,2}(?![\p{L}\p{N}])`,
  'gu',
);
const CAPITAL_TITLE = String.raw`(?:MR|MRS|MS|MISS|DR|PROF|SIR|HERR|FRAU|MME|REV)\.?`;
const CAPITAL_TITLED = new RegExp(String.raw`(?<![\p{L}\p{N}])${CAPITAL_TITLE} (?:(?:AND|&) ${CAPITAL_TITLE} )?(?:\p{Lu}\.? ){0,3}(?<name>\p{Lu}[\p{Lu}'’-]{2,})(?: \p{Lu}[\p{Lu}'’-]{2,})?(?![\p{L}\p{N}])`, 'gu');
const CAPITALS = /(?<![\p{L}\p{N}])(?<first>\p{Lu}{3,}(?:-\p{Lu}{3,})?)(?: \p{Lu}\.?)? (?:(?:VAN|VON|DE|DER|LA|LE) ){0,2}(?<name>\p{Lu}['’]?\p{Lu}[\p{Lu}'’-]+)(?![\p{L}\p{N}])/gu;
const CAPITAL_INITIALS = /(?<![\p{L}\p{N}.])(?:\p{Lu}\. ?){1,3}(?<name>\p{Lu}['’]?\p{Lu}{3,}(?:-\p{Lu}{3,})?)(?![\p{L}\p{N}])/gu;
const CAPITAL_CUED = /(?<!\p{L})(?:property of|belongs to|belonged to|signed|thanks to|name:?|owner:?|for|from|by|mate|friend|brother|customer|return to|PROPERTY OF|BELONGS TO|RETURN TO|OWNER:?|NAME:?|FROM|THANKS(?: TO)?,?|CHEERS,?|REGARDS,?|SIGNED|MATE|FRIEND|BROTHER|BY) (?<name>\p{Lu}{3,})(?![\p{L}\p{N}])/dgu;

/** Names after a title, "prof. Zielinski" among them, and names in capitals: "JOHN PEMBERTON", "MRS J SLOANE". */
export function titledNames(text: string, isFirst: (lowerCase: string) => boolean, isOrdinary: (lowerCase: string) => boolean): FoundSpan[] {
  const span = (start: number, end: number): FoundSpan => ({ kind: 'personal-name', start, end, certainty: 'direct' });
  const matches = (pattern: RegExp, isOne: (match: RegExpMatchArray) => boolean) =>
    matchesOf(text, pattern).filter(isOne).map((match) => span(match.index, match.index + match[0].length));
  const named = (match: RegExpMatchArray) => !isOrdinary((match.groups?.name ?? '').toLowerCase());
  const opens = ({ groups }: RegExpMatchArray) => (groups?.first ?? '').toLowerCase().split('-').every((part) => isFirst(part) && !isOrdinary(part));
  const alone = matchesOf(text, CAPITAL_CUED).filter(({ groups }) => isFirst((groups?.name ?? '').toLowerCase()) && !isOrdinary((groups?.name ?? '').toLowerCase()));
  return [
    ...matches(TITLED, named),
    ...matches(CAPITAL_TITLED, named),
    ...matches(CAPITALS, (match) => named(match) && opens(match)),
    ...matches(CAPITAL_INITIALS, named),
    ...alone.map(({ indices }) => span(...(indices?.groups?.name ?? [0, 0]))),
  ];
}
