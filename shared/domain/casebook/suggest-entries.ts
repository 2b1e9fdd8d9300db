import { distance } from 'fastest-levenshtein';
import type { Suggestion } from '../../schemas/case-view';
import { valuesOf, type VocabularyWords } from './vocabulary-words';

export type SuggestQuery = { text: string; kinds: readonly Suggestion['kind'][]; limit: number };

type Entry = { slug: string; label: string; meaning: string; synonyms: string[] };

/**
 * Vocabulary entries that what was typed so far may mean, best first. Every word typed must begin a word of the
 * entry's label or of one of its synonyms; a word of four letters or more may be one slip off. Empty text offers
 * nothing.
 */
export function suggestEntries(words: VocabularyWords, { text, kinds, limit }: SuggestQuery): Suggestion[] {
  const typed = wordsOf(text);
  if (typed.length === 0) return [];
  const found = kinds.flatMap((kind) =>
    [...entriesOf(words, kind).values()].flatMap((entry, position) => {
      const score = scoreEntry(entry, typed);
      return score === null ? [] : [{ kind, entry, score, position }];
    }),
  );
  found.sort((a, b) => a.score - b.score || a.entry.label.length - b.entry.label.length || a.position - b.position);
  return found.slice(0, limit).map(({ kind, entry }) => ({
    kind,
    id: entry.slug,
    label: entry.label,
    meaning: entry.meaning,
    values: kind === 'cause' ? [] : valuesOf(words, { kind, id: entry.slug }),
  }));
}

function entriesOf(words: VocabularyWords, kind: Suggestion['kind']): ReadonlyMap<string, Entry> {
  return { symptom: words.symptoms, check: words.checks, fix: words.fixes, cause: words.causes }[kind];
}

function wordsOf(text: string): string[] {
  return text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
}

/** 0 is best; the label counts before synonyms, an exact beginning before a slip. Null where a word fits nowhere. */
function scoreEntry(entry: Entry, typed: readonly string[]): number | null {
  const scores = [entry.label, ...entry.synonyms].flatMap((name, index) => {
    const score = scoreName(wordsOf(name), typed);
    return score === null ? [] : [score + (index === 0 ? 0 : 1)];
  });
  return scores.length === 0 ? null : Math.min(...scores);
}

function scoreName(name: readonly string[], typed: readonly string[]): number | null {
  let score = name[0]?.startsWith(typed[0] ?? '') ? 0 : 0.5;
  for (const word of typed) {
    if (name.some((other) => other.startsWith(word))) continue;
    if (word.length < 4 || !name.some((other) => isOneSlipOff(other, word))) return null;
    score += 2;
  }
  return score;
}

/** A letter too many, too few or wrong, against the beginning of the other word. */
function isOneSlipOff(other: string, word: string): boolean {
  return [-1, 0, 1].some((longer) => distance(other.slice(0, word.length + longer), word) <= 1);
}
