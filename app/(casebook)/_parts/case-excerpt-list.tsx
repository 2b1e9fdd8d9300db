import Link from 'next/link';
import type { CaseListItem } from '../../../shared/schemas/case-view';
import { formatCounted } from '../../_components/format-figures';
import { CaseLine } from '../cases/_parts/case-line';

type CaseExcerptListProps = {
  cases: readonly CaseListItem[];
  /** How many there are in all. */
  total: number;
  /** The list that has all of them. */
  href: string;
  /** The Atom feed of new ones. */
  feed?: string;
};

/** The latest cases of a page's subject, and the way to all of them. */
export function CaseExcerptList({ cases, total, href, feed }: CaseExcerptListProps) {
  return (
    <section className="section">
      <h2>Cases</h2>
      {cases.length === 0 ? <p>No case yet. Yours could be the first.</p> : null}
      <ol className="rows">
        {cases.map((item) => (
          <CaseLine key={item.id} item={item} />
        ))}
      </ol>
      <p className="onward no-print">
        {cases.length > 0 ? (
          <Link href={href} prefetch={false} className="press">
            All {formatCounted(total, 'case')}
          </Link>
        ) : (
          <Link href="/post" prefetch={false} className="press">
            Post a case
          </Link>
        )}
        {feed ? (
          // A plain link: a feed is not a page.
          <a href={feed}>Follow new ones (Atom)</a>
        ) : null}
      </p>
    </section>
  );
}
