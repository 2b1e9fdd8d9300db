import type { FixResult } from '../../schemas/case';
import type { StateClass } from './state-words';

/** What a phrase names. */
export type Target =
  | { kind: 'symptom'; id: string; value: 'present' | 'absent' }
  /** What a symptom says is missing or dead ("picture" of "no picture"): its state decides the symptom. */
  | { kind: 'subject'; id: string; lack: 'absent' | 'dead' | 'good' }
  | { kind: 'check'; id: string }
  /** An outcome named without its check. */
  /** A part with a state that only one of its checks knows ("processor hot"). */
  | { kind: 'told'; check: string; outcome: string }
  | { kind: 'outcome'; check: string; outcome: string }
  | { kind: 'fix'; id: string }
  | { kind: 'role'; id: string }
  | { kind: 'state'; classes: readonly StateClass[] }
  | { kind: 'result'; result: FixResult };

/** `words` are the written words of the phrases: the very same words speak a little more for a target than other inflections. */
export type NamedTarget = { target: Target; quality: number; words: Set<string> };

/** A set of terms that together name targets, in any order. */
export type Phrase = {
  id: number;
  required: readonly string[];
  /** Place of "no" among the required terms, −1 where there is none. */
  noSlot: number;
  /** Slots (as bits) of small required words that a check's name can do without: "composite" for "composite output". */
  droppable: number;
  /** Raise the score where present, are not missed where not. */
  optional: readonly string[];
  /** Written with "and" or a slash, so a match may cross one. */
  joined: boolean;
  targets: NamedTarget[];
};
