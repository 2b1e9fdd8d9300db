import type { Certainty, DetailKind, FoundSpan } from './personal-detail';
import { matchesOf } from '../text/matches-of';

/** Every match of a global pattern as a span; with a group named `it`, that group alone. The pattern needs `g`, and `d` for a group. */
export function allMatches(text: string, pattern: RegExp, kind: DetailKind, certainty: Certainty = 'direct'): FoundSpan[] {
  return matchesOf(text, pattern).map((match) => {
    const [start, end] = match.indices?.groups?.it ?? [match.index, match.index + match[0].length];
    return { kind, start, end, certainty };
  });
}
