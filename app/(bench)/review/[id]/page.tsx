import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { cache } from 'react';
import { caseIdSchema } from '../../../../shared/schemas/case';
import { CaseEnding } from '../../../(casebook)/cases/_parts/case-ending';
import { CasePhotos } from '../../../(casebook)/cases/_parts/case-photos';
import { CaseReadings } from '../../../(casebook)/cases/_parts/case-readings';
import { CaseTimeline } from '../../../(casebook)/cases/_parts/case-timeline';
import { firstOf, type SearchParams } from '../../../_address/question';
import { attempt } from '../../../_casebook/attempt';
import { formatMonth } from '../../../_components/format-figures';
import { capital, inSentence, joinWords } from '../../../_components/words';
import { isRefusal, serverCaller } from '../../../_trpc/server';
import { STATUS_WORDS } from '../../submissions/_parts/status-words';
import { ClaimBar } from '../_parts/claim-bar';
import { Decisions } from '../_parts/decisions';
import { DoneLine } from '../_parts/done-line';
import { DuplicateSection } from '../_parts/duplicate-section';
import { FoundSection } from '../_parts/found-section';
import { MarkedText } from '../_parts/marked-text';
import { PastSection } from '../_parts/past-section';
import { readFilter, reviewHref } from '../_parts/queue-address';
import { requireModerator } from '../_parts/require-moderator';
import { ReviewKeys } from '../_parts/review-keys';
import { WeighedSection } from '../_parts/weighed-section';
import '../../post/post.css';
import '../review.css';

export const metadata: Metadata = { title: 'Review a case', robots: { index: false } };

type PageProps = { params: Promise<{ id: string }>; searchParams: Promise<SearchParams> };

const findItem = cache(async (id: string) => {
  try {
    return await serverCaller().review.item({ id });
  } catch (error) {
    if (isRefusal(error, 'review-not-found')) return null;
    throw error;
  }
});

export default async function ReviewCasePage({ params, searchParams }: PageProps) {
  const { id } = await params;
  await requireModerator(`/review/${id}`);
  const item = caseIdSchema.safeParse(id).success ? await findItem(id) : null;
  if (item === null) notFound();
  const address = await searchParams;
  const filter = readFilter(address);
  const query = reviewHref('', filter).slice(1);
  const { view, machine, seen, may } = item;
  const next = (await attempt(() => serverCaller().review.next({ filter, after: id }))).value;
  const photos = (await attempt(() => serverCaller().photo.ofCase({ id }))).value ?? [];
  const present = view.symptoms.filter((s) => s.present).map((s) => inSentence(s.label));
  const nextHref = next ? reviewHref(`/review/${next}`, filter) : null;
  return (
    <>
      <DoneLine done={firstOf(address, 'done')} />
      <p className="figure soft">Case {view.id}</p>
      <h1>{present.length > 0 ? capital(joinWords(present)) : 'No symptom recorded'}</h1>
      <p className="lead">
        {view.device.label}, {formatMonth(view.month)}: <strong>{STATUS_WORDS[view.status].name}</strong>
        {item.newcomer ? ', from a new contributor' : ''}
      </p>
      {item.own ? <p className="note">This is your own submission: another moderator has to decide.</p> : null}
      {item.claim && !item.own ? <ClaimBar id={id} claim={item.claim} key={id} /> : null}
      <nav className="review-bar" aria-label="Queue">
        <Link href={reviewHref('/review', filter)} prefetch={false} className="press">
          The queue
        </Link>
        {nextHref ? (
          <Link href={nextHref} prefetch={false} className="press">
            On to the next, undecided
          </Link>
        ) : null}
        <ReviewKeys next={nextHref} queue={reviewHref('/review', filter)} />
      </nav>
      <div className="review-columns">
        <article aria-label="As it would be published">
          <CaseTimeline found={view} />
          <CaseEnding found={view} />
          <section className="section">
            <h2>In their words</h2>
            <p className="story">
              {view.narrative === '' ? 'Nothing written.' : <MarkedText text={view.narrative} field="narrative" marks={item.marks} />}
            </p>
          </section>
          <CaseReadings readings={view.readings} />
          <CasePhotos photos={photos} />
          <Decisions view={view} seen={seen} may={may} query={query} />
        </article>
        <div>
          <FoundSection marks={item.marks} contradictions={item.contradictions} unknown={item.unknown} proposals={item.proposals} />
          {machine ? (
            <>
              <DuplicateSection view={view} duplicates={machine.duplicates} seen={seen} mayMerge={may.includes('merge')} query={query} />
              <WeighedSection weighed={machine.weighed} published={view.status === 'accepted'} />
            </>
          ) : null}
          <PastSection item={item} />
        </div>
      </div>
    </>
  );
}
