import Form from 'next/form';
import Link from 'next/link';
import type { FilterName, SearchFacets, SearchSort } from '../../../../shared/schemas/search';
import { paramOf, type SearchAddress, searchHref } from '../../../_address/search-address';
import { formatCount } from '../../../_components/format-figures';
import { FILTER_WORDS, FILTERS_SHOWN, type ValueWords } from './filter-words';

const SORT_WORDS: Record<SearchSort, string> = { relevance: 'Best first', newest: 'Newest first', oldest: 'Oldest first' };

type SearchFormProps = { search: SearchAddress; facets: SearchFacets | null; words: ValueWords };

/** Words, filters with how many cases each leaves, and the order; a plain GET form. */
export function SearchForm({ search, facets, words }: SearchFormProps) {
  const inUse = FILTERS_SHOWN.flatMap((name) => (search.filters[name] === undefined ? [] : [words(name, search.filters[name])]));
  return (
    <Form action="/search" className="search-form" key={searchHref(search)}>
      <div className="ask search-words">
        <div className="ask-field">
          <label htmlFor="search-words">Words</label>
          <input
            id="search-words"
            type="search"
            name="q"
            defaultValue={search.text}
            maxLength={2000}
            autoComplete="off"
            aria-describedby="search-hint"
          />
        </div>
        <button type="submit" className="press press-main">
          Search
        </button>
      </div>
      <p id="search-hint" className="small soft no-print">
        Any order, any inflection. Quotes keep words side by side: &quot;pulsing reset&quot;. A hyphen leaves a word out: -monitor.
      </p>
      <details className="search-filters">
        <summary>Narrow and sort{inUse.length > 0 ? `: ${inUse.join(', ')}` : ''}</summary>
        <div className="search-grid ask">
          {FILTERS_SHOWN.map((name) => (
            <FilterChoice key={name} name={name} chosen={search.filters[name]} counts={facets?.[name] ?? {}} words={words} />
          ))}
          <div className="ask-field">
            <label htmlFor="search-sort">Order</label>
            <select id="search-sort" name="sort" defaultValue={search.sort}>
              {Object.entries(SORT_WORDS).map(([sort, label]) => (
                <option key={sort} value={sort}>
                  {label}
                </option>
              ))}
            </select>
          </div>
        </div>
        <p className="onward no-print">
          <button type="submit" className="press">
            Show these
          </button>
          {inUse.length > 0 ? (
            <Link href={searchHref({ ...search, filters: {}, from: null })} prefetch={false}>
              Drop all filters
            </Link>
          ) : null}
        </p>
      </details>
    </Form>
  );
}

type FilterChoiceProps = { name: FilterName; chosen: string | undefined; counts: Record<string, number>; words: ValueWords };

function FilterChoice({ name, chosen, counts, words }: FilterChoiceProps) {
  const values = Object.entries(counts).sort((a, b) => (name === 'year' ? (a[0] < b[0] ? 1 : -1) : b[1] - a[1] || (a[0] < b[0] ? -1 : 1)));
  if (chosen !== undefined && counts[chosen] === undefined) values.unshift([chosen, 0]);
  return (
    <div className="ask-field">
      <label htmlFor={`search-${name}`}>{FILTER_WORDS[name]}</label>
      <select id={`search-${name}`} name={paramOf(name)} defaultValue={chosen ?? ''}>
        <option value="">Any</option>
        {values.map(([value, cases]) => (
          <option key={value} value={value}>
            {words(name, value)} ({formatCount(cases)})
          </option>
        ))}
      </select>
    </div>
  );
}
