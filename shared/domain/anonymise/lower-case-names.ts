import type { FoundSpan } from './personal-detail';
import { RELATION } from './person-cues';
import { matchesOf } from '../text/matches-of';

const AFTER_CUE = new RegExp(
  `(?<![\\p{L}])(?:(?:my|our|his|her) (?:${RELATION})(?: (?:called|named))?,?|(?:^|[\\n.!?;,] ?)(?:cheers|thanks|regards|hi|hello|thx)(?: to)?,?|signed|bought (?:it |this |one )?from|thanks to|(?:a|the) (?:friend|mate|guy|bloke|chap|customer) (?:called|named)) (?<it>\\p{Ll}{3,})(?: (?<surname>\\p{Lu}\\p{Ll}+))?(?![\\p{L}\\p{N}])`,
  'dgiu',
);

const INITIALLED = /(?<!\p{L})(?:technician|engineer|owner|name|signed|(?:repaired|recapped|serviced|tested) by|customer|author|seller|buyer|contact):? \p{Ll}\. ?\p{Ll}{3,}(?!\p{L})/giu;

/** First names without their capital, after words that leave no doubt: "my mate dave". */
export function lowerCaseNames(text: string, isFirstName: (lowerCase: string) => boolean): FoundSpan[] {
  const initialled = matchesOf(text, INITIALLED).map((match): FoundSpan => ({ kind: 'personal-name', start: match.index, end: match.index + match[0].length, certainty: 'direct' }));
  const named = matchesOf(text, AFTER_CUE)
    .filter((match) => isFirstName(match.groups?.it?.toLowerCase() ?? ''))
    .map((match): FoundSpan => {
      const [start, end] = match.indices?.groups?.it ?? [match.index, match.index];
      return { kind: 'personal-name', start, end, certainty: 'direct' };
    });
  return [...named, ...initialled];
}
