import Link from 'next/link';
import type { AfterView } from '../../../../shared/schemas/afterwards';
import { formatCounted, formatMonth } from '../../../_components/format-figures';

type CaseAfterwardsProps = { id: string; reports: AfterView[]; mayReport: boolean };

/** What became of the repair later, and the way to say so; nothing where there was no repair. */
export function CaseAfterwards({ id, reports, mayReport }: CaseAfterwardsProps) {
  if (reports.length === 0 && !mayReport) return null;
  return (
    <section className="section" aria-labelledby="afterwards-head">
      <h2 id="afterwards-head">Afterwards</h2>
      {reports.length === 0 ? <p>Nobody has said yet whether it held.</p> : null}
      <ul className="case-afterwards">
        {reports.map((report, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two reports can be alike, and the order never changes
          <li key={i}>
            {formatMonth(report.month)}: <strong>{afterWords(report)}</strong>, says{' '}
            {report.source === 'contributor' ? 'whoever repaired it' : 'another reader'}.
          </li>
        ))}
      </ul>
      {mayReport ? (
        <p>
          <Link href={`/cases/${id}/afterwards`} className="back" prefetch={false}>
            Say whether it held
          </Link>
        </p>
      ) : null}
    </section>
  );
}

/** `held for 6 months`, `came back after 2 months`. */
export function afterWords({ kind, months }: Pick<AfterView, 'kind' | 'months'>): string {
  return `${kind === 'held' ? 'held for' : 'came back after'} ${formatCounted(months, 'month')}`;
}
