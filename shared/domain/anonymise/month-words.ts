/** Months as written in English, German, French, Spanish, Italian, Dutch, Portuguese, Polish, Czech, Finnish and the Scandinavian languages, in full and cut short; index 0 is January. */
const MONTH_WORDS: readonly string[][] = [
  ['January', 'Jan', 'Januar', 'Jänner', 'janvier', 'janv', 'enero', 'gennaio', 'januari', 'janeiro', 'stycznia', 'styczeń', 'ledna', 'leden', 'tammikuuta', 'ene'],
  ['February', 'Feb', 'Februar', 'février', 'fevrier', 'févr', 'febrero', 'febbraio', 'februari', 'fevereiro', 'lutego', 'luty', 'února', 'únor', 'helmikuuta', 'februari', 'fév', 'fev'],
  ['March', 'Mar', 'März', 'Mrz', 'mars', 'marzo', 'maart', 'março', 'marca', 'marzec', 'března', 'březen', 'maaliskuuta', 'marts', 'mrt', 'mär'],
  ['April', 'Apr', 'avril', 'avr', 'abril', 'aprile', 'abril', 'kwietnia', 'kwiecień', 'dubna', 'huhtikuuta', 'apríl'],
  ['May', 'Mai', 'mayo', 'maggio', 'mei', 'maio', 'maja', 'maj', 'května', 'toukokuuta'],
  ['June', 'Jun', 'Juni', 'juin', 'junio', 'giugno', 'junho', 'czerwca', 'června', 'kesäkuuta', 'giu'],
  ['July', 'Jul', 'Juli', 'juillet', 'juil', 'julio', 'luglio', 'julho', 'lipca', 'července', 'heinäkuuta', 'lug'],
  ['August', 'Aug', 'août', 'agosto', 'augustus', 'sierpnia', 'srpna', 'elokuuta', 'augusti', 'aout', 'ago'],
  ['September', 'Sept', 'Sep', 'septembre', 'septiembre', 'settembre', 'setembro', 'września', 'září', 'syyskuuta', 'sett'],
  ['October', 'Oct', 'Oktober', 'Okt', 'octobre', 'octubre', 'ottobre', 'outubro', 'października', 'října', 'lokakuuta', 'oktobra', 'ott'],
  ['November', 'Nov', 'novembre', 'noviembre', 'novembro', 'listopada', 'marraskuuta'],
  ['December', 'Dec', 'Dezember', 'Dez', 'décembre', 'déc', 'diciembre', 'dicembre', 'dezembro', 'grudnia', 'prosince', 'joulukuuta', 'dic', 'desember', 'decembrie'],
];

const NUMBERS = new Map(MONTH_WORDS.flatMap((words, i) => words.map((word) => [word.toLowerCase(), i + 1] as const)));

/** All month words, longest first, for a pattern. */
export const MONTH_PATTERN = [...NUMBERS.keys()].sort((a, b) => b.length - a.length).join('|');

/** 1 to 12, or null for what is no month's name. */
export const monthNumber = (word: string): number | null => NUMBERS.get(word.toLowerCase().replace(/\.$/u, '')) ?? null;

/** The English name of month 1 to 12. */
export const monthName = (month: number): string => MONTH_WORDS[month - 1]?.[0] ?? '';
