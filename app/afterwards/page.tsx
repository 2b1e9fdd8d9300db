import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound, redirect } from 'next/navigation';
import { isAtLeast } from '../../shared/domain/can/role';
import { AccountForm } from '../(account)/_parts/account-form';
import { afterWords } from '../(casebook)/cases/_parts/case-afterwards';
import { formatMonth } from '../_components/format-figures';
import { capital } from '../_components/words';
import { ReviewNav } from '../_components/review-nav';
import { serverCaller } from '../_trpc/server';
import { decide } from './decide';

export const metadata: Metadata = { title: 'How repairs held', robots: { index: false } };

/** Reports that wait, for moderators. */
export default async function AfterwardsListPage() {
  const account = await serverCaller().account.me();
  if (account === null) redirect('/sign-in?next=/afterwards');
  if (!isAtLeast(account.role, 'moderator')) notFound();
  const reports = await serverCaller().afterReport.list();
  return (
    <div className="account-page">
      <ReviewNav />
      <h1>How repairs held</h1>
      <p className="lead">
        What is accepted stands on the case’s page, and proof and figures follow: a suspected cause whose repair held counts more, a
        cure that came back no longer counts as one.
      </p>
      {reports.length === 0 ? <p>Nothing waits.</p> : null}
      <ul className="account-rows">
        {reports.map((report) => (
          <li key={report.id}>
            <p>
              <strong>{capital(afterWords(report))}</strong>, says {report.source === 'contributor' ? 'whoever repaired it' : 'a reader'},{' '}
              {formatMonth(report.month)}.{' '}
              <Link href={`/cases/${report.caseId}`} prefetch={false}>
                Case {report.caseId}
              </Link>
            </p>
            <div className="account-keys">
              <AccountForm action={decide} fields={[]} submit="Accept" hidden={{ id: report.id, accept: 'yes' }} isQuiet />
              <AccountForm action={decide} fields={[]} submit="Decline" hidden={{ id: report.id, accept: 'no' }} isQuiet />
            </div>
          </li>
        ))}
      </ul>
    </div>
  );
}
