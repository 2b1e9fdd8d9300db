import type { Metadata } from 'next';
import Link from 'next/link';
import { redirect } from 'next/navigation';
import { attempt } from '../../_casebook/attempt';
import { Trouble } from '../../_components/trouble';
import { serverCaller } from '../../_trpc/server';
import { DraftLine } from './_parts/draft-line';
import { OwnUnits } from './_parts/own-units';
import { SubmissionLine } from './_parts/submission-line';
import '../../_styles/account.css';
import '../post/post.css';
import '../review/review.css';

export const metadata: Metadata = { title: 'Your submissions', robots: { index: false } };

export default async function SubmissionsPage() {
  const { signedIn } = await serverCaller().submission.standing();
  if (!signedIn) redirect('/sign-in?next=/submissions');
  const { value: mine, trouble } = await attempt(() => serverCaller().submission.listMine());
  const { value: units } = await attempt(() => serverCaller().workingUnit.listMine());
  return (
    <div className="post-page">
      <h1>Your submissions</h1>
      <p className="lead">Seen by you and by the moderators only. A published case names nobody.</p>
      {trouble ? <Trouble kind={trouble} again="/submissions" /> : null}
      <p className="onward">
        <Link href="/post" className="press press-main" prefetch={false}>
          Post a case
        </Link>
      </p>
      {mine && mine.drafts.length > 0 ? (
        <section className="section" aria-labelledby="drafts-head">
          <h2 id="drafts-head">Not sent yet</h2>
          <ul className="submission-list">
            {mine.drafts.map((draft) => (
              <DraftLine key={draft.id} draft={draft} />
            ))}
          </ul>
        </section>
      ) : null}
      {mine ? (
        <section className="section" aria-labelledby="sent-head">
          <h2 id="sent-head">Sent</h2>
          {mine.submissions.length === 0 ? <p>Nothing is linked to this account.</p> : null}
          <ul className="submission-list">
            {mine.submissions.map((line) => (
              <SubmissionLine key={line.view.id} line={line} />
            ))}
          </ul>
        </section>
      ) : null}
      <OwnUnits units={units ?? []} />
    </div>
  );
}
