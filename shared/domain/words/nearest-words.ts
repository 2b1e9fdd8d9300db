import { distance } from 'fastest-levenshtein';
import { wordsOf } from '../casebook/match-name';
import type { Vocabulary } from '../../schemas/vocabulary';
import type { WordKind } from '../../schemas/word-edit';
import { wordsOfKind } from './word-lists';

/** An entry that a proposed word may be another name for. `name` is the one of its names that comes nearest. */
export type NearWord = { slug: string; label: string; name: string; similarity: number };

/** Below this two names have little more in common than any two. */
const LEAST = 0.35;

/**
 * Entries of a kind whose label or a synonym comes nearest to some words, the most similar first. Similarity, 0 to 1, is the
 * greater of two: Dice's coefficient over the words of both names, and one minus the edit distance (Levenshtein) over the
 * length of the longer name. 1 means that an entry goes by just this name, in whatever case.
 */
export function nearestWords(vocabulary: Vocabulary, kind: WordKind, text: string, take = 3): NearWord[] {
  const asked = text.trim().toLowerCase();
  const near = wordsOfKind(vocabulary, kind).flatMap(({ slug, label, synonyms, retired }) => {
    if (retired) return [];
    const names = [label, ...synonyms].map((name) => ({ name, similarity: similarity(asked, name.toLowerCase()) }));
    const best = names.reduce((a, b) => (b.similarity > a.similarity ? b : a));
    return best.similarity >= LEAST ? [{ slug, label, ...best }] : [];
  });
  return near.sort((a, b) => b.similarity - a.similarity || (a.label < b.label ? -1 : 1)).slice(0, take);
}

function similarity(a: string, b: string): number {
  const [left, right] = [new Set(wordsOf(a)), new Set(wordsOf(b))];
  const shared = [...left].filter((word) => right.has(word)).length;
  const dice = left.size + right.size === 0 ? 0 : (2 * shared) / (left.size + right.size);
  const edits = 1 - distance(a, b) / Math.max(a.length, b.length, 1);
  return Math.max(dice, edits);
}
