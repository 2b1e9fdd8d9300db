import type { RecordIndex } from './record-index';
import { DOUBLED, SEVERAL_CAUSES } from './record-words';

/** The few rows, taken out ones too, that must be looked at one by one: with two values of one observable, with several causes. */
export type OddRows = { known: number; doubled: number[]; several: number[] };

/** No rows looked at yet. */
export function createOddRows(): OddRows {
  return { known: 0, doubled: [], several: [] };
}

/** The odd rows of an index; those added since the last time are looked at first. */
export function oddRows({ odd, labels, rows }: RecordIndex): OddRows {
  for (; odd.known < rows; odd.known += 1) {
    const label = labels[odd.known] as number;
    if ((label & DOUBLED) !== 0) odd.doubled.push(odd.known);
    if ((label & SEVERAL_CAUSES) !== 0) odd.several.push(odd.known);
  }
  return odd;
}
