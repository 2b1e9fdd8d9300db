import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import Link from 'next/link';
import { caseIdSchema } from '../../../../../shared/schemas/case';
import { REPORT_REASONS, REPORT_WORDS, REVIEW_LIMITS } from '../../../../../shared/schemas/review';
import { DecisionForm } from '../../../../(bench)/review/_parts/decision-form';
import { attempt } from '../../../../_casebook/attempt';
import { serverCaller } from '../../../../_trpc/server';
import { sendReport } from './send-report';
import '../../../../(bench)/post/post.css';
import '../../../../(bench)/review/review.css';

export const metadata: Metadata = { title: 'Report a case', robots: { index: false } };

type PageProps = { params: Promise<{ id: string }> };

export default async function ReportPage({ params }: PageProps) {
  const { id } = await params;
  if (!caseIdSchema.safeParse(id).success) notFound();
  const { value: found } = await attempt(() => serverCaller().casebook.getCase({ id }));
  if (!found) notFound();
  return (
    <div className="post-page">
      <h1>Report a case</h1>
      <p className="lead">
        A moderator looks at it. Nothing says who you are.{' '}
        <Link href={`/cases/${id}`} prefetch={false}>
          Back to the case
        </Link>
      </p>
      <DecisionForm action={sendReport} hidden={{ id }} submit="Send the report" main>
        <div className="post-field">
          <label htmlFor="report-reason">What is wrong</label>
          <select id="report-reason" name="reason" defaultValue="">
            <option value="">Choose</option>
            {REPORT_REASONS.map((reason) => (
              <option key={reason} value={reason}>
                {REPORT_WORDS[reason]}
              </option>
            ))}
          </select>
        </div>
        <div className="post-field">
          <label htmlFor="report-text">Say where, in a sentence or two</label>
          <textarea id="report-text" name="text" rows={4} maxLength={REVIEW_LIMITS.report} />
        </div>
        <div className="post-trap" aria-hidden="true">
          <label htmlFor="report-website">Website</label>
          <input id="report-website" name="website" type="text" tabIndex={-1} autoComplete="off" />
        </div>
      </DecisionForm>
    </div>
  );
}
