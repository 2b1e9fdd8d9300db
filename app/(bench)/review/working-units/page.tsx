import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { attempt } from '../../../_casebook/attempt';
import { Note } from '../../../_components/note';
import { Trouble } from '../../../_components/trouble';
import { ReviewNav } from '../../../_components/review-nav';
import { isRefusal, serverCaller } from '../../../_trpc/server';
import { WaitingUnit } from './_parts/waiting-unit';
import '../../bench/bench.css';

export const metadata: Metadata = { title: 'Working units to review', robots: { index: false } };

/** Contributed readings that wait for a moderator, each against what is known of its board. */
export default async function ReviewWorkingUnitsPage() {
  const { signedIn } = await serverCaller().submission.standing();
  if (!signedIn) redirect('/sign-in?next=/review/working-units');
  const { value, trouble } = await attempt(waiting);
  return (
    <div className="post-page">
      <ReviewNav />
      <h1>Working units to review</h1>
      <p className="lead">Once accepted, these readings count towards what is usual at each pin of their board.</p>
      {trouble ? <Trouble kind={trouble} again="/review/working-units" /> : null}
      {value === 'not-allowed' ? <Note kind="warning">Your account may not do this: it is for moderators.</Note> : null}
      {Array.isArray(value) && value.length === 0 ? <p>Nothing waits.</p> : null}
      {Array.isArray(value) ? value.map((unit) => <WaitingUnit key={unit.id} unit={unit} />) : null}
    </div>
  );
}

async function waiting() {
  try {
    return await serverCaller().workingUnit.waiting();
  } catch (error) {
    if (isRefusal(error, 'not-allowed')) return 'not-allowed' as const;
    throw error;
  }
}
