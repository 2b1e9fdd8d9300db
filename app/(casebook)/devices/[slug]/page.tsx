import type { Metadata } from 'next';
import { notFound, redirect } from 'next/navigation';
import { cache } from 'react';
import { slugSchema } from '../../../../shared/schemas/terms';
import { attempt } from '../../../_casebook/attempt';
import { causesSummary, deviceTitle } from '../../../_casebook/finding-words';
import { pageMetadata } from '../../../_casebook/page-metadata';
import { Breadcrumbs } from '../../../_components/breadcrumbs';
import { formatCounted } from '../../../_components/format-figures';
import { Trouble } from '../../../_components/trouble';
import { Volunteered } from '../../../_components/volunteered';
import { HeatMap } from '../../../_plots/heat-map';
import { SharePlot } from '../../../_plots/share-plot';
import { serverCaller } from '../../../_trpc/server';
import { CaseExcerptList } from '../../_parts/case-excerpt-list';
import { OverTime } from '../../_parts/over-time';
import { BoardSection } from '../_parts/board-section';
import { RevisionChanges } from '../_parts/revision-changes';
import { WeakSpots } from '../_parts/weak-spots';

type PageProps = { params: Promise<{ slug: string }> };

const CAUSES_SHOWN = 12;

/** The device that an address names, asked for once a page; a word that is no slug names none. */
const attemptDevice = cache(async (slug: string) =>
  slugSchema.safeParse(slug).success
    ? attempt(() => serverCaller().browse.getDevice({ slug }))
    : ({ value: null, trouble: 'device-not-found' } as const),
);

export async function generateMetadata({ params }: PageProps): Promise<Metadata> {
  const { slug } = await params;
  const { value: view } = await attemptDevice(slug);
  if (!view) return { title: 'No such device' };
  const feed = `/devices/${slug}/feed.atom`;
  return pageMetadata({ title: deviceTitle(view), description: view.summary, path: `/devices/${slug}`, feed });
}

export default async function DevicePage({ params }: PageProps) {
  const { slug } = await params;
  const { value: view, trouble } = await attemptDevice(slug);
  if (trouble === 'device-not-found') return toBoardOrNowhere(slug);
  if (trouble) return <Trouble kind={trouble} again={`/devices/${slug}`} />;
  const { casebook } = serverCaller();
  const { cases } = await casebook.listCases({ device: slug, take: 5 });
  const roles = new Map((await casebook.listVocabulary()).roles.map((role) => [role.slug, role.label]));
  return (
    <>
      <Breadcrumbs above={[{ href: '/devices', label: 'Devices' }]} here={view.label} />
      <h1>{view.label}</h1>
      <p className="lead">
        {view.summary} Made by {view.maker.label}.
      </p>
      <p>
        {view.cases === 0 ? 'No case yet.' : `${formatCounted(view.cases, 'case')}.`}{' '}
        {view.boards.map((board) => (
          <a key={board.slug} href={`#${board.slug}`} className="jump">
            {board.label}
          </a>
        ))}
      </p>
      <section className="section">
        <h2>Common faults</h2>
        {view.causes.length === 0 ? <p>No cause was found yet.</p> : null}
        <SharePlot
          name="Cause"
          rows={view.causes.slice(0, CAUSES_SHOWN).map((cause) => ({ ...cause, href: `/parts/${cause.role.id}#${cause.id}` }))}
          summary={causesSummary(view.causes, view.causeNotFound)}
        />
      </section>
      <WeakSpots view={view} />
      <section className="section">
        <h2>What it does when it fails</h2>
        {view.symptoms.length === 0 ? <p>No symptom was recorded yet.</p> : null}
        <SharePlot
          name="Symptom"
          rows={view.symptoms.map((row) => ({ ...row, href: `/symptoms/${row.id}?on=${slug}` }))}
          summary="Share of its cases that recorded the symptom."
        />
        {view.together.rows.length > 0 && view.together.columns.length > 0 ? <h3>Which symptom goes with which cause</h3> : null}
        <HeatMap
          table={view.together}
          rowHref={(id) => `/symptoms/${id}?on=${slug}`}
          cellHref={(symptom, cause) => `/cases?${new URLSearchParams({ on: slug, symptom, cause })}`}
        />
      </section>
      <RevisionChanges changes={view.revisions} />
      {view.boards.map((board) => (
        <BoardSection key={board.slug} board={board} roles={roles} />
      ))}
      <OverTime months={view.months} />
      <CaseExcerptList cases={cases} total={view.cases} href={`/cases?on=${slug}`} feed={`/devices/${slug}/feed.atom`} />
      <Volunteered />
    </>
  );
}

/** The address of a board leads to its place on the page of its model. */
async function toBoardOrNowhere(slug: string): Promise<never> {
  const { value: devices } = await attempt(() => serverCaller().casebook.getCatalogue());
  const model = devices?.models.find((entry) => entry.boards.some((board) => board.slug === slug));
  if (model) redirect(`/devices/${model.slug}#${slug}`);
  notFound();
}
