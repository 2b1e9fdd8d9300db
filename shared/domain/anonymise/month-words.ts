/** Months as written in English, German, French, Spanish, Italian and Dutch, in full and cut short; index 0 is January. */
const MONTH_WORDS: readonly string[][] = [
  ['January', 'Jan', 'Januar', 'Jänner', 'janvier', 'janv', 'enero', 'gennaio', 'januari'],
  ['February', 'Feb', 'Februar', 'février', 'févr', 'febrero', 'febbraio', 'februari'],
  ['March', 'Mar', 'März', 'Mrz', 'mars', 'marzo', 'maart'],
  ['April', 'Apr', 'avril', 'avr', 'abril', 'aprile'],
  ['May', 'Mai', 'mayo', 'maggio', 'mei'],
  ['June', 'Jun', 'Juni', 'juin', 'junio', 'giugno'],
  ['July', 'Jul', 'Juli', 'juillet', 'juil', 'julio', 'luglio'],
  ['August', 'Aug', 'août', 'agosto', 'augustus'],
  ['September', 'Sept', 'Sep', 'septembre', 'septiembre', 'settembre'],
  ['October', 'Oct', 'Oktober', 'Okt', 'octobre', 'octubre', 'ottobre'],
  ['November', 'Nov', 'novembre', 'noviembre'],
  ['December', 'Dec', 'Dezember', 'Dez', 'décembre', 'déc', 'diciembre', 'dicembre'],
];

const NUMBERS = new Map(MONTH_WORDS.flatMap((words, i) => words.map((word) => [word.toLowerCase(), i + 1] as const)));

/** All month words, longest first, for a pattern. */
export const MONTH_PATTERN = [...NUMBERS.keys()].sort((a, b) => b.length - a.length).join('|');

/** 1 to 12, or null for what is no month's name. */
export const monthNumber = (word: string): number | null => NUMBERS.get(word.toLowerCase().replace(/\.$/u, '')) ?? null;

/** The English name of month 1 to 12. */
export const monthName = (month: number): string => MONTH_WORDS[month - 1]?.[0] ?? '';
