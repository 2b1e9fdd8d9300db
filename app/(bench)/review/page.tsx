import type { Metadata } from 'next';
import Link from 'next/link';
import { firstOf, type SearchParams } from '../../_address/question';
import { attempt } from '../../_casebook/attempt';
import { formatCounted } from '../../_components/format-figures';
import { Trouble } from '../../_components/trouble';
import { ReviewNav } from '../../_components/review-nav';
import { serverCaller } from '../../_trpc/server';
import { DoneLine } from './_parts/done-line';
import { readFilter, reviewHref } from './_parts/queue-address';
import { QueueFilter } from './_parts/queue-filter';
import { QueueList } from './_parts/queue-list';
import { requireModerator } from './_parts/require-moderator';
import '../post/post.css';
import './review.css';

export const metadata: Metadata = { title: 'Review', robots: { index: false } };

type PageProps = { searchParams: Promise<SearchParams> };

export default async function ReviewPage({ searchParams }: PageProps) {
  await requireModerator('/review');
  const params = await searchParams;
  const filter = readFilter(params);
  const { review } = serverCaller();
  const { value: page, trouble } = await attempt(() => review.queue({ filter, cursor: firstOf(params, 'from') }));
  const next = (await attempt(() => review.next({ filter }))).value;
  return (
    <>
      <ReviewNav />
      <h1>Review</h1>
      <p className="lead">
        {page ? `${formatCounted(page.counts.all, 'case')} waiting, ${page.counts.lookedAt} of them being looked at.` : null}
      </p>
      <DoneLine done={firstOf(params, 'done')} />
      {trouble ? <Trouble kind={trouble} again="/review" /> : null}
      <p className="onward">
        {next ? (
          <Link href={reviewHref(`/review/${next}`, filter)} className="press press-main" prefetch={false}>
            Begin with the next one
          </Link>
        ) : null}
        <Link href="/review/reports" prefetch={false} className="row-link">
          Reports about published cases ({page?.reports ?? 0})
        </Link>
      </p>
      {page ? <QueueFilter filter={filter} counts={page.counts} devices={page.devices} /> : null}
      {page && page.lines.length > 0 ? (
        <p className="soft small queue-hint">
          With the focus on a case, <kbd>j</kbd> and <kbd>k</kbd> lead to the next and the one before, <kbd>Enter</kbd> opens it.
        </p>
      ) : null}
      {page?.lines.length === 0 ? <p>Nothing waits here. {page.counts.all > 0 ? 'Show all to see the rest.' : ''}</p> : null}
      {page ? <QueueList lines={page.lines} query={reviewHref('', filter)} /> : null}
      {page?.next ? (
        <p className="pager">
          <Link href={reviewHref('/review', filter, [['from', page.next]])} prefetch={false} className="press">
            More of them
          </Link>
        </p>
      ) : null}
    </>
  );
}
