import { distance } from 'fastest-levenshtein';
import { stemOf, twinOf } from './spelling';
import { EVERYDAY_WORDS } from './word-classes';

/** The words of a vocabulary, arranged for correcting slips. */
export type Lexicon = {
  /** True for a word of the vocabulary, in any inflection. */
  has(word: string): boolean;
  /** The vocabulary word that a misspelt one most likely stands for, or null. */
  correct(word: string): string | null;
  /** Two vocabulary words that were written as one ("greyscreen"), or null. */
  split(word: string): readonly [string, string] | null;
};

const SHORTEST_CORRECTED = 4;
const LONGEST_CORRECTED = 24;

/**
 * Builds a lexicon. `counts` says how many phrases use each word: of two equally near words the commoner wins.
 * A slip is up to one edit in a word of 4 to 6 letters, two from 7 letters on; a swap of neighbours is one edit.
 * A first letter is trusted in short words. Everyday words and words with digits are never corrected.
 */
export function buildLexicon(counts: ReadonlyMap<string, number>): Lexicon {
  const byLength = new Map<number, string[]>();
  for (const word of counts.keys()) {
    if (word.length < 3 || /\d/.test(word)) continue;
    byLength.set(word.length, [...(byLength.get(word.length) ?? []), word]);
  }
  const stems = new Set([...counts.keys()].map((w) => stemOf(twinOf(w))));
  const has = (word: string) => counts.has(word) || stems.has(stemOf(twinOf(word)));
  const correct = (word: string): string | null => {
    const length = word.length;
    if (length < SHORTEST_CORRECTED || length > LONGEST_CORRECTED) return null;
    if (/[^\p{L}]/u.test(word) || EVERYDAY_WORDS.has(word)) return null;
    const allowed = length >= 7 ? 2 : 1;
    let best: string | null = null;
    let bestCost = Infinity;
    for (let other = length - allowed; other <= length + allowed; other += 1) {
      for (const candidate of byLength.get(other) ?? []) {
        const cost = slipCost(word, candidate, allowed) - Math.min(counts.get(candidate) ?? 0, 50) / 1000;
        if (cost < bestCost) [best, bestCost] = [candidate, cost];
      }
    }
    return bestCost <= allowed ? best : null;
  };
  const split = (word: string): readonly [string, string] | null => {
    if (word.length < 6 || word.length > LONGEST_CORRECTED) return null;
    for (let at = 3; at <= word.length - 3; at += 1) {
      const left = word.slice(0, at);
      const right = word.slice(at);
      if (has(left) && has(right)) return [left, right];
    }
    return null;
  };
  return { has, correct, split };
}

/** Edits between two words, counting a swap of neighbours once; a different first letter costs half an edit more. */
function slipCost(written: string, candidate: string, allowed: number): number {
  const sameFirst = written[0] === candidate[0];
  if (!sameFirst && written.length < 6 && !isSwap(written, candidate)) return Infinity;
  const edits = distance(written, candidate);
  if (edits > allowed + 1) return Infinity;
  const cost = edits === 2 && isSwap(written, candidate) ? 1 : edits;
  if (cost > allowed) return Infinity;
  if (Math.min(written.length, candidate.length) < 4 && cost > 0 && !isSwap(written, candidate)) {
    return candidate.length >= 3 && candidate.length < written.length && isDoubled(written, candidate) ? 1 : Infinity;
  }
  return cost + (sameFirst ? 0 : 0.5);
}

/** "gery" for "grey": the same letters with one pair of neighbours exchanged. */
function isSwap(a: string, b: string): boolean {
  if (a.length !== b.length) return false;
  let at = 0;
  while (at < a.length && a[at] === b[at]) at += 1;
  return at + 1 < a.length && a[at] === b[at + 1] && a[at + 1] === b[at] && a.slice(at + 2) === b.slice(at + 2);
}

/** "humm" for "hum": one letter typed twice. */
function isDoubled(a: string, b: string): boolean {
  for (let at = 1; at < a.length; at += 1) {
    if (a[at] === a[at - 1] && a.slice(0, at) + a.slice(at + 1) === b) return true;
  }
  return false;
}
