import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { caseIdSchema } from '../../../../../shared/schemas/case';
import { attempt } from '../../../../_casebook/attempt';
import { formatMonth } from '../../../../_components/format-figures';
import { Trouble } from '../../../../_components/trouble';
import { serverCaller } from '../../../../_trpc/server';
import { AfterForm } from './after-form';
import { sendReport } from './send-report';

export const metadata: Metadata = { title: 'Did the repair hold?', robots: { index: false } };

type PageProps = { params: Promise<{ id: string }> };

export default async function AfterwardsPage({ params }: PageProps) {
  const { id } = await params;
  if (!caseIdSchema.safeParse(id).success) notFound();
  const { value: found, trouble } = await attempt(() => serverCaller().casebook.getCase({ id }));
  if (trouble === 'case-not-found') notFound();
  if (trouble) return <Trouble kind={trouble} again={`/cases/${id}/afterwards`} />;
  const { signedIn } = await serverCaller().submission.standing();
  return (
    <div className="account-page">
      <h1>Did the repair hold?</h1>
      <p className="lead">
        <Link href={`/cases/${id}`} prefetch={false}>
          {found.device.label}, {formatMonth(found.month)}
        </Link>
      </p>
      <p>Published by the month, and never with who said it.</p>
      {signedIn ? null : (
        <p>
          Whoever repaired it uses the key of the case. Do you know of the repair otherwise?{' '}
          <Link href={`/sign-in?next=${encodeURIComponent(`/cases/${id}/afterwards`)}`} prefetch={false}>
            Sign in
          </Link>{' '}
          and say so.
        </p>
      )}
      <AfterForm action={sendReport} caseId={id} signedIn={signedIn} />
    </div>
  );
}
