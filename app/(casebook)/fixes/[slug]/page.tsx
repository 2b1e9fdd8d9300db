import type { Metadata } from 'next';
import { notFound, redirect } from 'next/navigation';
import { cache } from 'react';
import { slugSchema } from '../../../../shared/schemas/terms';
import { attempt } from '../../../_casebook/attempt';
import { fixTitle } from '../../../_casebook/finding-words';
import { pageMetadata } from '../../../_casebook/page-metadata';
import { Breadcrumbs } from '../../../_components/breadcrumbs';
import { formatCount, formatCounted, formatPercent, formatPercentRange } from '../../../_components/format-figures';
import { Trouble } from '../../../_components/trouble';
import { Volunteered } from '../../../_components/volunteered';
import { serverCaller } from '../../../_trpc/server';
import { CaseExcerptList } from '../../_parts/case-excerpt-list';
import { OverTime } from '../../_parts/over-time';
import { FixBreakdown } from '../_parts/fix-breakdown';
import { FixHow } from '../_parts/fix-how';

type PageProps = { params: Promise<{ slug: string }> };

/** The fix that an address names, asked for once a page; a word that is no slug names none. */
const attemptFix = cache(async (slug: string) =>
  slugSchema.safeParse(slug).success
    ? attempt(() => serverCaller().browse.getFix({ slug }))
    : ({ value: null, trouble: 'entry-not-found' } as const),
);

export async function generateMetadata({ params }: PageProps): Promise<Metadata> {
  const { slug } = await params;
  const { value: view } = await attemptFix(slug);
  if (!view) return { title: 'No such fix' };
  return pageMetadata({ title: fixTitle(view), description: view.meaning, path: `/fixes/${slug}` });
}

export default async function FixPage({ params }: PageProps) {
  const { slug } = await params;
  const { value: view, trouble } = await attemptFix(slug);
  if (trouble === 'entry-not-found') notFound();
  if (trouble) return <Trouble kind={trouble} again={`/fixes/${slug}`} />;
  // Merged: the address of the entry that stands for it, for as long as the merge is not undone.
  if (view.id !== slug) redirect(`/fixes/${view.id}`);
  const { cases } = await serverCaller().casebook.listCases({ fix: slug, take: 5 });
  const casesWithIt = view.months.reduce((sum, { count }) => sum + count, 0);
  const { record } = view;
  return (
    <>
      <Breadcrumbs above={[{ href: '/fixes', label: 'Fixes' }]} here={view.label} />
      <h1>{view.label}</h1>
      <p className="lead">{view.meaning}</p>
      {record.tried === 0 ? (
        <p>Nobody has tried it yet.</p>
      ) : (
        <p>
          Cured <strong>{formatCount(record.resolved)}</strong> of {formatCounted(record.tried, 'try', 'tries')} (
          {formatPercent(record.resolved / record.tried)},{' '}
          <span className="figure">{formatPercentRange(record.low, record.high)}</span>); partly{' '}
          {formatCount(record.partly)}, no change {formatCount(record.noChange)}, made worse {formatCount(record.madeWorse)}.
        </p>
      )}
      <FixHow view={view} />
      <FixBreakdown
        head="By what the cause turned out to be"
        name="Cause"
        rows={view.byCause}
        overall={record}
        summary="How often it cured, by the cause that was found in the end: what it is good for, and what it was tried on in vain."
        hrefOf={(id) => `/cases?${new URLSearchParams({ cause: id, fix: slug })}`}
      />
      <FixBreakdown
        head="By symptom"
        name="Symptom"
        rows={view.bySymptom}
        overall={record}
        summary="How often it cured units that showed the symptom."
        hrefOf={(id) => `/symptoms/${id}`}
      />
      <FixBreakdown
        head="By device"
        name="Device"
        rows={view.byDevice}
        overall={record}
        summary="How often it cured, device by device; nothing is borrowed from one to another here."
        hrefOf={(id) => `/devices/${id}`}
      />
      <OverTime months={view.months} />
      <CaseExcerptList cases={cases} total={casesWithIt} href={`/cases?fix=${slug}`} />
      <Volunteered />
    </>
  );
}
