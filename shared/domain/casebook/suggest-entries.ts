import type { Suggestion } from '../../schemas/case-view';
import { scoreNamed, wordsOf } from './match-name';
import { valuesOf, type VocabularyWords } from './vocabulary-words';

export type SuggestQuery = { text: string; kinds: readonly Suggestion['kind'][]; limit: number };

type Entry = { slug: string; label: string; meaning: string; synonyms: string[]; retired?: true | undefined };

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
      const score = entry.retired ? null : scoreNamed(entry, typed);
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
