import { firstOf, type Question, questionHref, type SearchParams } from '../../_address/question';

/**
 * What of an answer is shown although it is folded away by default; for the page alone, in the address. What is folded away is not on
 * the page at all: a phone need not load it, and it opens without scripts.
 */
export type Unfolded = {
  /** Slug of a check shown in full. */
  how: string | null;
  /** Stage whose further checks are listed. */
  rung: number | null;
  /** Whether the causes that hardly matter are listed. */
  rest: boolean;
  /** Whether the fixes that hardly matter are listed. */
  fixes: boolean;
};

/** Reads it out of an address; anything else there says nothing. */
export function readUnfolded(params: SearchParams): Unfolded {
  const rung = firstOf(params, 'rung');
  return {
    how: firstOf(params, 'how'),
    rung: rung !== null && /^[0-9]$/.test(rung) ? Number(rung) : null,
    rest: firstOf(params, 'rest') !== null,
    fixes: firstOf(params, 'fixes') !== null,
  };
}

/** Address of an answer with this unfolded; the inverse of `readUnfolded`. */
export function unfoldedHref(question: Question, { how, rung, rest, fixes }: Unfolded): string {
  const pairs: [string, string][] = [];
  if (how !== null) pairs.push(['how', how]);
  if (rung !== null) pairs.push(['rung', String(rung)]);
  if (rest) pairs.push(['rest', '1']);
  if (fixes) pairs.push(['fixes', '1']);
  return questionHref('/', question, pairs);
}
