import type { FixResult } from '../../schemas/case';
import type { WrittenReading } from '../readings/parse-reading';
import type { Piece } from './cover-clause';
import type { Target } from './phrase';
import type { StateClass } from './state-words';

/** A state said of something: words, a number, an outcome's own name, or the result of a fix. */
export type Modifier = {
  kind: 'modifier';
  piece: Piece;
  place: Place;
  classes: ReadonlySet<StateClass>;
  /** Outcomes that these words name, by check. */
  outcomes: ReadonlyMap<string, string>;
  result: FixResult | null;
  reading: WrittenReading | null;
  negated: boolean;
  /** Tokens that it is made of, with its "not". */
  tokens: number[];
};

/** Something named that a finding may be about. */
export type Mention = {
  kind: 'mention';
  piece: Piece;
  place: Place;
  /** Best first. */
  candidates: { target: Target; score: number }[];
  negated: boolean;
  /** Its own words begin with "no": a list may share that. */
  leadsWithNo: boolean;
  /** Set against something missing ("picture but no sound"): it is there. */
  affirmed: boolean;
  /** Where its "no" or its state stood: decides whether a list shares it. */
  stateFrom: 'before' | 'after' | null;
  states: Modifier[];
  result: FixResult | null;
  tokens: number[];
  resultTokens: number[];
};

/** Position in the sentence: clause and list item, counted from 0, and what joined this item to the one before. */
export type Place = {
  clause: number;
  group: number;
  /** Item in which its last word stands; more than `group` where its words run over an "and". */
  lastGroup: number;
  joiner: string | null;
  /** The word that broke off the clause before ("but"), or null at the beginning. */
  opening: string | null;
};

export type Node = Mention | Modifier | { kind: 'negator'; at: number; place: Place };

/** True where nothing was said yet about the mention. */
export function isBare(mention: Mention): boolean {
  return mention.states.length === 0 && !mention.negated && !mention.affirmed && mention.result === null;
}
