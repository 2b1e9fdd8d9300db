import { capitalRuns } from './capital-runs';
import { FIRST_NAMES, FIRST_NAMES_THAT_ARE_WORDS } from './first-names';
import { judgeRun, type NameLists } from './judge-run';
import { lowerCaseNames } from './lower-case-names';
import { ORDINARY_WORDS } from './ordinary-words';
import type { FindSpans, KnownWords } from './personal-detail';
import { titledNames } from './titled-names';
import { PLACE_NAMES, PLACE_NAMES_THAT_ARE_WORDS } from './place-names';

const lowered = (names: readonly string[]): ReadonlySet<string> => new Set(names.map((name) => name.toLowerCase()));

const first = lowered(FIRST_NAMES);
const doubtfulFirst = lowered(FIRST_NAMES_THAT_ARE_WORDS);
const places = lowered(PLACE_NAMES);
const doubtfulPlaces = lowered(PLACE_NAMES_THAT_ARE_WORDS);

/** Names of persons and places, by lists of them and by what stands around them. */
export const namesAndPlaces: FindSpans = (text, known) => {
  const lists = listsFor(known);
  const found = [...capitalRuns(text)].map((run) => judgeRun(text, run, lists));
  return [
    ...found.filter((span) => span !== null),
    ...lowerCaseNames(text, (word) => first.has(word) && !lists.isOrdinary(word)),
    ...titledNames(text, (word) => first.has(word), lists.isOrdinary),
  ];
};

function listsFor(known: KnownWords): NameLists {
  const isOrdinary = (word: string) => ORDINARY_WORDS.has(word) || known.has(word);
  return { first, doubtfulFirst, places, doubtfulPlaces, isOrdinary };
}
