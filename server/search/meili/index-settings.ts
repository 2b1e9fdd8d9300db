import type { Settings } from 'meilisearch';
import { stemOf } from '../../../shared/domain/read-query/spelling';
import { formGroups } from '../../../shared/domain/read-query/written-forms';
import { FIELD_WEIGHTS, SEARCH_FIELDS } from '../../../shared/domain/search/search-document';
import { STOP_WORDS } from '../../../shared/domain/search/stop-words';

/** Fields of a document that filters go by. */
export const FILTER_FIELDS = {
  category: 'category',
  device: 'deviceSlugs',
  symptom: 'symptomSlugs',
  cause: 'causeSlugs',
  outcome: 'outcome',
  proof: 'proof',
  year: 'year',
  photos: 'photos',
} as const;

/** Most cases that a search counts. */
export const COUNTED_MAX = 100_000;
/** Most values of a filter that are counted. */
const VALUES_MAX = 1_000;

/**
 * How Meilisearch is to search. Fields stand in the order of their weight. "sort" comes first: whoever asks for the newest
 * cases gets the newest. The id comes last, so that equal cases keep their order from page to page.
 *
 * @param synonyms from `synonymsOf`
 */
export function indexSettings(synonyms: Record<string, string[]>): Settings {
  return {
    searchableAttributes: [...SEARCH_FIELDS].sort((a, b) => FIELD_WEIGHTS[b] - FIELD_WEIGHTS[a]),
    filterableAttributes: Object.values(FILTER_FIELDS),
    sortableAttributes: ['month', 'id'],
    rankingRules: ['sort', 'words', 'typo', 'proximity', 'attribute', 'exactness', 'id:asc'],
    stopWords: [...STOP_WORDS],
    synonyms,
    typoTolerance: { enabled: true, minWordSizeForTypos: { oneTypo: 4, twoTypos: 8 } },
    pagination: { maxTotalHits: COUNTED_MAX },
    faceting: { maxValuesPerFacet: VALUES_MAX },
  };
}

/** Most words that one word is taken for: the server refuses none, but each costs time at every search. */
const TWINS_MAX = 12;

/**
 * Words that find each other. Meilisearch does not reduce words to stems: inflections of the words that stand in the
 * cases are told to it as synonyms, beside the spellings and short forms that the reader of the look-up knows.
 *
 * @param words every word of the index, in lower case
 */
export function synonymsOf(words: Iterable<string>): Record<string, string[]> {
  const groups = new Map<string, Set<string>>();
  for (const word of words) {
    if (word.length < 3 || /\d/.test(word)) continue;
    const stem = stemOf(word);
    groups.set(stem, (groups.get(stem) ?? new Set()).add(word));
  }
  const twins = new Map<string, Set<string>>();
  for (const group of [...[...groups.values()].map((set) => [...set]), ...formGroups()]) {
    if (group.length < 2) continue;
    for (const word of group) {
      const others = twins.get(word) ?? new Set();
      for (const other of group) if (other !== word) others.add(other);
      twins.set(word, others);
    }
  }
  return Object.fromEntries([...twins].map(([word, others]) => [word, [...others].slice(0, TWINS_MAX)]));
}
