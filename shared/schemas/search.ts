import { z } from 'zod';
import { CASE_OUTCOMES, PROOFS } from './case';
import type { CaseListItem } from './case-view';
import { DEVICE_CATEGORIES } from './terms';

/** Most characters of a type-ahead; what lies beyond is not looked at. */
export const TYPED_LENGTH = 200;

export const SUGGESTED_KINDS = ['symptom', 'device', 'part', 'fix', 'case'] as const;
export type SuggestedKind = (typeof SUGGESTED_KINDS)[number];

/** What the one search box offers while somebody types: groups in a fixed order, those without items left out. */
export type SuggestedPages = { groups: { kind: SuggestedKind; items: SuggestedPage[] }[] };

/** A page that what was typed may mean. `note` says in a few words what it is; empty where the label says it all. */
export type SuggestedPage = { label: string; href: string; note: string };

export const suggestPagesSchema = z.object({
  text: z.string().transform((text) => text.slice(0, TYPED_LENGTH)),
  /** Most items of each kind. */
  perKind: z.int().min(1).max(10).default(4),
});

/** Longest text that a search takes; of a longer one the rest is not looked at. */
export const SEARCH_TEXT_LENGTH = 2_000;

/** What cases can be narrowed by. Within one name any of the values, across names all of them. */
export const FILTER_NAMES = ['category', 'device', 'symptom', 'cause', 'outcome', 'proof', 'year', 'photos'] as const;
export type FilterName = (typeof FILTER_NAMES)[number];
export type SearchFilters = Partial<Record<FilterName, readonly string[]>>;

/** The value of `proof` for a case whose cause was not found. */
export const NO_PROOF = 'none';

const closed = (values: readonly string[]) => (value: string) => values.includes(value);
const CLOSED_SETS: Partial<Record<FilterName, readonly string[]>> = {
  category: DEVICE_CATEGORIES,
  outcome: CASE_OUTCOMES,
  proof: [...PROOFS, NO_PROOF],
  photos: ['yes', 'no'],
};
const VALUE = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;

/** Whether a filter can take this value at all; whether the vocabulary has it is another matter. */
export function isFilterValue(name: FilterName, value: string): boolean {
  if (name === 'year') return /^(19|20)[0-9]{2}$/.test(value);
  return value.length <= 80 && VALUE.test(value) && closed(CLOSED_SETS[name] ?? [value])(value);
}

const filterValues = (name: FilterName) =>
  z.array(z.string().refine((value) => isFilterValue(name, value), `This is no value of the filter "${name}".`)).max(20).optional();

export const SEARCH_SORTS = ['relevance', 'newest', 'oldest'] as const;
export type SearchSort = (typeof SEARCH_SORTS)[number];

/** Words, filters, order and place in the list: one description for page, procedure and command line. */
export const searchQuerySchema = z.object({
  text: z.string().default('').transform((text) => text.slice(0, SEARCH_TEXT_LENGTH)),
  filters: z.object(Object.fromEntries(FILTER_NAMES.map((name) => [name, filterValues(name)]))).default({}).transform((f) => f as SearchFilters),
  sort: z.enum(SEARCH_SORTS).default('relevance'),
  /** Where the page before this one ended; null for the first. */
  cursor: z.string().max(200).nullable().default(null),
  take: z.int().min(1).max(100).default(20),
  /** Whether the values of the filters are counted too. */
  facets: z.boolean().default(true),
});
export type SearchQuery = z.output<typeof searchQuerySchema>;

export type EngineName = 'sqlite' | 'meilisearch';

/** A case that was found. */
export type SearchHit = {
  id: string;
  /** Higher is better; comparable within one result only. 0 where no words were searched for. */
  score: number;
  /** The stretch of the narrative where the words stand, as plain text. */
  snippet: string;
  /** Which stretches of the snippet matched: [start, end) in UTF-16 units, in order. */
  highlights: [number, number][];
};

/** How many of the found cases have each value; a filter's own choice does not narrow its own counts. */
export type SearchFacets = Record<FilterName, Record<string, number>>;

export type SearchResult = {
  engine: EngineName;
  /** Cases found in all; counted, not estimated, up to the engine's limit. */
  total: number;
  hits: SearchHit[];
  facets: SearchFacets | null;
  /** `all`: every case has all the words. `some`: few have, so those with some of them are listed too. */
  matched: 'all' | 'some';
  /** Words that stand in no case and what was searched for in their place. */
  corrections: { typed: string; meant: string }[];
  /** Words that stand in no case, nor anything near them; they were left out. */
  unknown: string[];
  /** Cursor of the following page; null at the end. */
  next: string | null;
};

/** A found case with the words to show it. */
export type FoundCase = SearchHit & { item: CaseListItem };

/** What the page and the procedure answer. */
export type SearchAnswer = Omit<SearchResult, 'hits'> & {
  hits: FoundCase[];
  /** The first engine of the site could not be reached, so another one answered. */
  fellBack: boolean;
};
