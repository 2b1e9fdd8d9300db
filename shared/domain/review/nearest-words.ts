import { distance } from 'fastest-levenshtein';
import type { ProposalKind } from '../../schemas/submission';
import type { VocabularyWords } from '../casebook/vocabulary-words';
import { resemblance, shinglesOf } from './text-resemblance';

/** An entry that a proposed word may mean; `nearness` is 0 to 1. `by` is the label or synonym that came nearest. */
export type NearEntry = { id: string; label: string; meaning: string; by: string; nearness: number };

const LEAST = 0.34;

/** The entries of a kind whose label or a synonym is nearest to a proposed word, best first; few or none. */
export function nearestWords(words: VocabularyWords, { kind, word }: { kind: ProposalKind; word: string }, most = 3): NearEntry[] {
  const entries = { symptom: words.symptoms, check: words.checks, fix: words.fixes, cause: words.causes }[kind];
  return [...entries.values()]
    .map(({ slug, label, meaning, synonyms }) => {
      const [best] = [label, ...synonyms]
        .map((by) => ({ by, nearness: wordNearness(word, by) }))
        .sort((a, b) => b.nearness - a.nearness);
      return { id: slug, label, meaning, by: best?.by ?? label, nearness: best?.nearness ?? 0 };
    })
    .filter(({ nearness }) => nearness >= LEAST)
    .sort((a, b) => b.nearness - a.nearness || (a.id < b.id ? -1 : 1))
    .slice(0, most);
}

/** Of the words that both have, and of the letters: whichever says that they are nearer. */
function wordNearness(a: string, b: string): number {
  const [one, two] = [a.toLowerCase().trim(), b.toLowerCase().trim()];
  const letters = 1 - distance(one, two) / Math.max(one.length, two.length, 1);
  return Math.max(letters, resemblance(shinglesOf(one, 1), shinglesOf(two, 1)));
}
