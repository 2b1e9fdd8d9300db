import { FILTER_NAMES, type FilterName, isFilterValue, SEARCH_SORTS, SEARCH_TEXT_LENGTH, type SearchSort } from '../../shared/schemas/search';
import { allOf, firstOf, type SearchParams } from './question';

/** A search as the address holds it: one value of each filter at most. */
export type SearchAddress = {
  text: string;
  filters: Partial<Record<FilterName, string>>;
  sort: SearchSort;
  /** Where the page before ended. */
  from: string | null;
};

/** Name of a filter in the address; a device is called as in the look-up. */
export const paramOf = (name: FilterName): string => (name === 'device' ? 'on' : name);

/** Reads a search out of an address. Never throws: what says nothing is left out. */
export function readSearch(params: SearchParams): SearchAddress {
  const filters: SearchAddress['filters'] = {};
  for (const name of FILTER_NAMES) {
    const value = allOf(params, paramOf(name)).find((entry) => isFilterValue(name, entry));
    if (value !== undefined) filters[name] = value;
  }
  const sort = SEARCH_SORTS.find((order) => order === firstOf(params, 'sort')) ?? 'relevance';
  return { text: (firstOf(params, 'q') ?? '').slice(0, SEARCH_TEXT_LENGTH), filters, sort, from: firstOf(params, 'from') };
}

/** The address of a search; the inverse of `readSearch`. */
export function searchHref({ text, filters, sort, from }: SearchAddress): string {
  const pairs: [string, string][] = [];
  if (text.trim() !== '') pairs.push(['q', text]);
  for (const name of FILTER_NAMES) {
    const value = filters[name];
    if (value !== undefined) pairs.push([paramOf(name), value]);
  }
  if (sort !== 'relevance') pairs.push(['sort', sort]);
  if (from !== null) pairs.push(['from', from]);
  const query = new URLSearchParams(pairs).toString();
  return query === '' ? '/search' : `/search?${query}`;
}

/** The search as the procedure takes it. */
export function askedSearch({ text, filters, sort, from }: SearchAddress) {
  return { text, sort, cursor: from, filters: Object.fromEntries(Object.entries(filters).map(([name, value]) => [name, [value]])) };
}
