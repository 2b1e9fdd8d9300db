import type { SearchParams } from '../../_address/question';
import { firstOf } from '../../_address/question';

/** What of an answer is shown although it is folded away by default; for the page alone, in the address. */
export type Unfolded = {
  /** Slug of a check shown in full. */
  how: string | null;
  /** Whether the causes that hardly matter are listed. */
  rest: boolean;
};

/** Reads it out of an address; anything else there says nothing. */
export function readUnfolded(params: SearchParams): Unfolded {
  return { how: firstOf(params, 'how'), rest: firstOf(params, 'rest') !== null };
}
