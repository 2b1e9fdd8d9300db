import type { Metadata } from 'next';
import Link from 'next/link';
import { REPORT_WORDS } from '../../../../shared/schemas/review';
import { firstOf, type SearchParams } from '../../../_address/question';
import { attempt } from '../../../_casebook/attempt';
import { formatMonth } from '../../../_components/format-figures';
import { Trouble } from '../../../_components/trouble';
import { capital, inSentence, joinWords } from '../../../_components/words';
import { ReviewNav } from '../../../_components/review-nav';
import { serverCaller } from '../../../_trpc/server';
import { leaveAsIs } from '../_actions/decide';
import { DecisionForm } from '../_parts/decision-form';
import { DoneLine } from '../_parts/done-line';
import { requireModerator } from '../_parts/require-moderator';
import '../../post/post.css';
import '../review.css';

export const metadata: Metadata = { title: 'Reports', robots: { index: false } };

type PageProps = { searchParams: Promise<SearchParams> };

export default async function ReportsPage({ searchParams }: PageProps) {
  await requireModerator('/review/reports');
  const params = await searchParams;
  const { value: page, trouble } = await attempt(() => serverCaller().review.reports({ cursor: firstOf(params, 'from') }));
  return (
    <>
      <ReviewNav />
      <h1>Reports</h1>
      <p className="lead">What people have against published cases, the longest open first. Who they are is not kept.</p>
      <DoneLine done={firstOf(params, 'done')} />
      {trouble ? <Trouble kind={trouble} again="/review/reports" /> : null}
      {page?.lines.length === 0 ? <p>Nobody has anything against a published case.</p> : null}
      <ol className="rows queue">
        {page?.lines.map(({ report, view }) => (
          <li key={report.id} className="row queue-line">
            <div>
              <p>
                <strong>{REPORT_WORDS[report.reason]}.</strong> “{report.text}”
              </p>
              <p className="case-told">Reported in {formatMonth(report.month)}</p>
              <Link href={`/review/${view.id}`} prefetch={false}>
                {capital(joinWords(view.symptoms.filter((s) => s.present).map((s) => inSentence(s.label)))) || 'The case'}, {view.device.label}
              </Link>
            </div>
            <details className="decision">
              <summary>Leave the case as it is</summary>
              <DecisionForm action={leaveAsIs} hidden={{ reportId: report.id }} submit="Settle the report" />
            </details>
          </li>
        ))}
      </ol>
      {page?.next ? (
        <p className="pager">
          <Link href={`/review/reports?from=${page.next}`} prefetch={false} className="press">
            More of them
          </Link>
        </p>
      ) : null}
    </>
  );
}
