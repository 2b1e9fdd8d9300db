import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { cache } from 'react';
import { slugSchema } from '../../../../shared/schemas/terms';
import { attempt } from '../../../_casebook/attempt';
import { causesSummary, partTitle } from '../../../_casebook/finding-words';
import { pageMetadata } from '../../../_casebook/page-metadata';
import { Breadcrumbs } from '../../../_components/breadcrumbs';
import { formatCount, formatPercent, formatPercentRange } from '../../../_components/format-figures';
import { Trouble } from '../../../_components/trouble';
import { Volunteered } from '../../../_components/volunteered';
import { capital, joinWords } from '../../../_components/words';
import { ForestPlot } from '../../../_plots/forest-plot';
import { SharePlot } from '../../../_plots/share-plot';
import { serverCaller } from '../../../_trpc/server';
import { CaseExcerptList } from '../../_parts/case-excerpt-list';
import { OverTime } from '../../_parts/over-time';
import { PartChecks } from '../_parts/part-checks';
import { PartPlacesTable } from '../_parts/part-places-table';

type PageProps = { params: Promise<{ role: string }> };

/** The part that an address names, asked for once a page; a word that is no slug names none. */
const attemptPart = cache(async (slug: string) =>
  slugSchema.safeParse(slug).success
    ? attempt(() => serverCaller().browse.getPart({ slug }))
    : ({ value: null, trouble: 'entry-not-found' } as const),
);

export async function generateMetadata({ params }: PageProps): Promise<Metadata> {
  const { role } = await params;
  const { value: view } = await attemptPart(role);
  if (!view) return { title: 'No such part' };
  return pageMetadata({ title: partTitle(view), description: view.meaning, path: `/parts/${role}` });
}

export default async function PartPage({ params }: PageProps) {
  const { role } = await params;
  const { value: view, trouble } = await attemptPart(role);
  if (trouble === 'entry-not-found') notFound();
  if (trouble) return <Trouble kind={trouble} again={`/parts/${role}`} />;
  const { cases } = await serverCaller().casebook.listCases({ part: role, take: 5 });
  const { suspected, share } = view;
  return (
    <>
      <Breadcrumbs above={[{ href: '/parts', label: 'Parts' }]} here={capital(view.label)} />
      <h1>{capital(view.label)}</h1>
      <p className="lead">{view.meaning}</p>
      {view.synonyms.length > 0 ? <p className="soft">Also said: {joinWords(view.synonyms.slice(0, 8), 'or')}.</p> : null}
      {share.of === 0 ? (
        <p>No case yet.</p>
      ) : (
        <p>
          The cause in <strong>{formatCount(share.count)}</strong> of {formatCount(share.of)} cases (
          {formatPercent(share.count / share.of)}).{' '}
          {suspected.of === 0 ? (
            'Nobody has suspected it yet.'
          ) : (
            <>
              Where it was suspected, it was the cause in <strong>{formatCount(suspected.count)}</strong> of{' '}
              {formatCount(suspected.of)} ({formatPercent(suspected.count / suspected.of)},{' '}
              <span className="figure">{formatPercentRange(suspected.low, suspected.high)}</span>). Suspected means that somebody
              checked it, or tried a fix of it.
            </>
          )}
        </p>
      )}
      <section className="section">
        <h2>How it fails</h2>
        {view.failures.length === 0 ? <p>It was never found to be the cause.</p> : null}
        <SharePlot
          name="Failure"
          rows={view.failures.map((cause) => ({ ...cause, href: `/cases?cause=${cause.id}`, anchor: cause.id }))}
          summary={causesSummary(view.failures, 0)}
        />
      </section>
      <section className="section">
        <h2>What cures it</h2>
        {view.fixes.length === 0 ? <p>The vocabulary has no fix for it.</p> : null}
        <ForestPlot
          name="Fix"
          rows={view.fixes}
          hrefOf={(id) => `/fixes/${id}`}
          summary="Share of all tries that cured, whatever the cause turned out to be. Larger squares were tried more often."
        />
      </section>
      <section className="section">
        <h2>What is seen with it</h2>
        {view.symptoms.length === 0 ? <p>No case yet.</p> : null}
        <SharePlot
          name="Symptom"
          rows={view.symptoms.map((row) => ({ ...row, href: `/symptoms/${row.id}` }))}
          summary="Of the cases whose cause it was, how many recorded the symptom."
        />
      </section>
      <PartChecks checks={view.checks} />
      <PartPlacesTable places={view.places} />
      <section className="section">
        <h2>On which devices it was the cause</h2>
        {view.devices.length === 0 ? <p>On none yet.</p> : null}
        <SharePlot
          name="Device"
          rows={view.devices.map((row) => ({ ...row, href: `/devices/${row.id}` }))}
          summary="Share of each device's own cases."
        />
      </section>
      <OverTime months={view.months} />
      <CaseExcerptList cases={cases} total={share.count} href={`/cases?part=${role}`} />
      <Volunteered />
    </>
  );
}
