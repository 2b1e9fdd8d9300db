import Link from 'next/link';
import type { SearchAnswer } from '../../../../shared/schemas/search';
import { type SearchAddress, searchHref } from '../../../_address/search-address';
import { formatCounted } from '../../../_components/format-figures';
import { joinWords } from '../../../_components/words';

/** How many were found, what was read otherwise than it was typed, and where to go on. */
export function SearchTold({ search, answer }: { search: SearchAddress; answer: SearchAnswer }) {
  const { total, matched, corrections, unknown, fellBack } = answer;
  const isNarrowed = Object.keys(search.filters).length > 0;
  return (
    <div role="status" className="search-told">
      <p>
        <strong>{total === 0 ? 'No case' : formatCounted(total, 'case')}</strong>
        {matched === 'some' && total > 0 ? ': few have all of these words, so those with some of them are listed too.' : '.'}
      </p>
      {corrections.map(({ typed, meant }) => (
        <p key={typed}>
          Searched for <strong>{meant}</strong> instead of {typed}.{' '}
          <Link href={searchHref({ ...search, text: `"${typed}"`, from: null })} prefetch={false}>
            Only {typed}
          </Link>
        </p>
      ))}
      {unknown.length > 0 ? <p>In no case, and left out: {joinWords(unknown)}.</p> : null}
      {total === 0 ? <Nothing search={search} isNarrowed={isNarrowed} /> : null}
      {fellBack ? <p className="small soft">The search server does not answer at the moment; SQLite did.</p> : null}
      {search.text.trim() === '' ? null : (
        <p className="onward no-print">
          <Link href={`/?${new URLSearchParams({ q: search.text, ...(search.filters.device ? { on: search.filters.device } : {}) })}`} prefetch={false}>
            Units like this one: look it up
          </Link>
        </p>
      )}
    </div>
  );
}

function Nothing({ search, isNarrowed }: { search: SearchAddress; isNarrowed: boolean }) {
  if (isNarrowed) {
    return (
      <p>
        Nothing is left with these filters.{' '}
        <Link href={searchHref({ ...search, filters: {}, from: null })} prefetch={false}>
          Search without them
        </Link>
      </p>
    );
  }
  return (
    <p>
      Try fewer words, or others: the fault as it is seen, a part, a device. <Link href="/words">All the words</Link> that the casebook knows.
    </p>
  );
}
