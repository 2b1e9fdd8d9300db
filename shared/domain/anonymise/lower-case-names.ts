import type { FoundSpan } from './personal-detail';
import { RELATION } from './person-cues';

const AFTER_CUE = new RegExp(
  `(?<![\\p{L}])(?:(?:my|our|his|her) (?:${RELATION})(?: (?:called|named))?,?|(?:^|[\\n.!?;,] ?)(?:cheers|thanks|regards|hi|hello|thx)(?: to)?,?|signed|bought (?:it |this |one )?from|thanks to|(?:a|the) (?:friend|mate|guy|bloke|chap|customer) (?:called|named)) (?<it>\\p{Ll}{3,})(?: (?<surname>\\p{Lu}\\p{Ll}+))?(?![\\p{L}\\p{N}])`,
  'dgiu',
);

/** First names without their capital, after words that leave no doubt: "my mate dave". */
export function lowerCaseNames(text: string, isFirstName: (lowerCase: string) => boolean): FoundSpan[] {
  return [...text.matchAll(AFTER_CUE)]
    .filter((match) => isFirstName(match.groups?.it?.toLowerCase() ?? ''))
    .map((match) => {
      const [start, end] = match.indices?.groups?.it ?? [match.index, match.index];
      return { kind: 'personal-name', start, end, certainty: 'direct' };
    });
}
