import type { MultiSearchQuery } from 'meilisearch';
import type { SearchTerm } from '../../../shared/domain/search/parse-words';
import { HIGHLIGHT_CLOSE, HIGHLIGHT_OPEN, type SearchDocument } from '../../../shared/domain/search/search-document';
import { FILTER_NAMES, type FilterName, type SearchFilters, type SearchQuery } from '../../../shared/schemas/search';
import { FILTER_FIELDS } from './index-settings';

/** Words of a snippet. */
const SNIPPET_WORDS = 28;

/** The terms in the server's own syntax: quotes for what stands side by side, a hyphen for what must not be there. */
export function queryText(terms: readonly SearchTerm[]): string {
  return terms
    .map(({ words, not, quoted }) => {
      const text = words.join(' ');
      return `${not ? '-' : ''}${quoted || not ? `"${text}"` : text}`;
    })
    .join(' ');
}

/** Filters as the server takes them: any value of a name, and all names. */
export function filterOf(filters: SearchFilters, except: FilterName | null = null): string[][] {
  return FILTER_NAMES.flatMap((name) => {
    const values = filters[name] ?? [];
    return name === except || values.length === 0 ? [] : [values.map((value) => `${FILTER_FIELDS[name]} = ${JSON.stringify(value)}`)];
  });
}

export type Strategy = 'all' | 'frequency';
type Asked = { indexUid: string; q: string; matchingStrategy: Strategy };

/** One page of documents, from `offset` on. */
export function pageRequest(asked: Asked, query: SearchQuery, { offset, limit }: { offset: number; limit: number }): MultiSearchQuery {
  const sort = query.sort === 'relevance' && asked.q !== '' ? {} : { sort: [`month:${query.sort === 'oldest' ? 'asc' : 'desc'}`, 'id:asc'] };
  return {
    ...asked,
    ...sort,
    filter: filterOf(query.filters),
    offset,
    limit,
    attributesToRetrieve: ['id', 'month'] satisfies (keyof SearchDocument)[],
    attributesToCrop: ['narrative'],
    cropLength: SNIPPET_WORDS,
    cropMarker: '…',
    attributesToHighlight: ['narrative'],
    highlightPreTag: HIGHLIGHT_OPEN,
    highlightPostTag: HIGHLIGHT_CLOSE,
    showRankingScore: true,
  };
}

/** Counts: of all that is found, and of the values of these filters; a page of one is asked for because only pages are counted exactly. */
export function countRequest(asked: Asked, filters: SearchFilters, names: readonly FilterName[], except: FilterName | null = null): MultiSearchQuery {
  return {
    ...asked,
    filter: filterOf(filters, except),
    page: 1,
    hitsPerPage: 1,
    attributesToRetrieve: ['id'],
    facets: names.map((name) => FILTER_FIELDS[name]),
  };
}
