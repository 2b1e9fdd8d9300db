import Link from 'next/link';
import { inSentence } from '../../../_components/words';

export type CaseFilter = { kind: string; id: string; label: string; told: string; href: string | null };

type FilterTagsProps = { filters: CaseFilter[]; pairs: [string, string][] };

/** What narrows the list, each with the way to its page and the way to drop it. */
export function FilterTags({ filters, pairs }: FilterTagsProps) {
  if (filters.length === 0) return null;
  return (
    <ul className="filter-tags">
      {filters.map(({ kind, id, label, told, href }) => (
        <li key={kind}>
          {told}{' '}
          {href === null ? (
            inSentence(label)
          ) : (
            <Link href={href} prefetch={false} className="row-link">
              {inSentence(label)}
            </Link>
          )}{' '}
          <Link
            href={`/cases?${new URLSearchParams(pairs.filter(([name, value]) => !(name === kind && value === id)))}`}
            prefetch={false}
            className="press press-small"
          >
            drop<span className="sr-only"> {label}</span>
          </Link>
        </li>
      ))}
    </ul>
  );
}
