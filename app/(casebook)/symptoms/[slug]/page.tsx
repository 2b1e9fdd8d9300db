import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound, redirect } from 'next/navigation';
import { cache } from 'react';
import { slugSchema } from '../../../../shared/schemas/terms';
import { EMPTY_QUESTION, firstOf, questionHref, type SearchParams } from '../../../_address/question';
import { attempt } from '../../../_casebook/attempt';
import { causesSummary, fixesSummary, symptomTitle } from '../../../_casebook/finding-words';
import { pageMetadata } from '../../../_casebook/page-metadata';
import { Breadcrumbs } from '../../../_components/breadcrumbs';
import { formatCount, formatPercent, formatPercentRange } from '../../../_components/format-figures';
import { Trouble } from '../../../_components/trouble';
import { Volunteered } from '../../../_components/volunteered';
import { inSentence, joinWords } from '../../../_components/words';
import { ForestPlot } from '../../../_plots/forest-plot';
import { SharePlot } from '../../../_plots/share-plot';
import { serverCaller } from '../../../_trpc/server';
import { CaseExcerptList } from '../../_parts/case-excerpt-list';
import { OverTime } from '../../_parts/over-time';
import { DeviceFilter } from '../../cases/_parts/device-filter';
import { FirstChecks } from '../_parts/first-checks';

type PageProps = { params: Promise<{ slug: string }>; searchParams: Promise<SearchParams> };

const CAUSES_SHOWN = 12;
const FIXES_SHOWN = 15;

const readAddress = async ({ params, searchParams }: PageProps) => {
  const device = slugSchema.safeParse(firstOf(await searchParams, 'on') ?? '');
  return { slug: (await params).slug, device: device.success ? device.data : null };
};

/** The symptom that an address names, asked for once a page; a word that is no slug names none. */
const attemptSymptom = cache(async (slug: string, device: string | null) =>
  slugSchema.safeParse(slug).success
    ? attempt(() => serverCaller().browse.getSymptom({ slug, device }))
    : ({ value: null, trouble: 'entry-not-found' } as const),
);

export async function generateMetadata(props: PageProps): Promise<Metadata> {
  const { slug, device } = await readAddress(props);
  const { value: view } = await attemptSymptom(slug, device);
  if (!view) return { title: 'No such symptom' };
  const path = `/symptoms/${slug}${device ? `?on=${device}` : ''}`;
  return pageMetadata({ title: symptomTitle(view), description: view.meaning, path, feed: `/symptoms/${slug}/feed.atom` });
}

export default async function SymptomPage(props: PageProps) {
  const { slug, device } = await readAddress(props);
  const { value: view, trouble } = await attemptSymptom(slug, device);
  if (trouble === 'entry-not-found') notFound();
  if (trouble) return <Trouble kind={trouble} again={`/symptoms/${slug}`} />;
  // Merged: the address of the entry that stands for it, for as long as the merge is not undone.
  if (view.id !== slug) redirect(`/symptoms/${view.id}${device ? `?on=${device}` : ''}`);
  const { casebook } = serverCaller();
  const devices = await casebook.listDevices();
  const { cases } = await casebook.listCases({ symptom: slug, device, take: 5 });
  const here = new URLSearchParams({ symptom: slug, ...(device ? { on: device } : {}) });
  const question = { ...EMPTY_QUESTION, device, set: [{ kind: 'symptom' as const, id: slug, value: 'present' as const }] };
  const { share } = view;
  return (
    <>
      <Breadcrumbs above={[{ href: '/symptoms', label: 'Symptoms' }]} here={view.label} />
      <h1>
        {view.label}
        {view.device ? ` on ${view.device.label}` : ''}
      </h1>
      <p className="lead">{view.meaning}</p>
      {view.synonyms.length > 0 ? <p className="soft">Also said: {joinWords(view.synonyms.slice(0, 8), 'or')}.</p> : null}
      <p>
        {share.of === 0 ? (
          'No case yet.'
        ) : (
          <>
            In <strong>{formatCount(share.count)}</strong> of {formatCount(share.of)} cases (
            {formatPercent(share.count / share.of)}, <span className="figure">{formatPercentRange(share.low, share.high)}</span>).
          </>
        )}
        {view.hiddenBy.length > 0 ? ` Cannot be seen with ${joinWords(view.hiddenBy.map((s) => inSentence(s.label)), 'or')}.` : ''}
      </p>
      <div className="no-print">
        <DeviceFilter devices={devices} device={device} action={`/symptoms/${slug}`} />
        <p className="onward">
          <Link href={questionHref('/', question)} prefetch={false} className="press">
            Look up with this symptom
          </Link>
        </p>
      </div>
      <section className="section">
        <h2>What it was</h2>
        {view.causes.length === 0 ? <p>No cause was found yet.</p> : null}
        <SharePlot
          name="Cause"
          rows={view.causes.slice(0, CAUSES_SHOWN).map((cause) => ({ ...cause, href: `/parts/${cause.role.id}#${cause.id}` }))}
          summary={causesSummary(view.causes, view.causeNotFound)}
        />
      </section>
      <section className="section">
        <h2>What cured it</h2>
        {view.fixes.length === 0 ? <p>No fix was tried yet.</p> : null}
        <ForestPlot
          name="Fix"
          rows={view.fixes.slice(0, FIXES_SHOWN)}
          hrefOf={(id) => `/fixes/${id}`}
          summary={`${fixesSummary(view.fixes)}${view.device ? ' Where this device has few tries, the share is drawn toward related devices.' : ''}`}
        />
      </section>
      <FirstChecks checks={view.firstChecks} />
      <section className="section">
        <h2>Where it was seen</h2>
        {view.devices.length === 0 ? <p>No device has a case yet.</p> : null}
        <SharePlot
          name="Device"
          rows={view.devices.map((row) => ({ ...row, href: `/symptoms/${slug}?on=${row.id}` }))}
          summary="Share of each device's own cases that have it."
        />
      </section>
      <OverTime months={view.months} />
      <CaseExcerptList cases={cases} total={share.count} href={`/cases?${here}`} feed={`/symptoms/${slug}/feed.atom`} />
      <Volunteered />
    </>
  );
}
