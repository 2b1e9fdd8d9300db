import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { cache } from 'react';
import { caseIdSchema } from '../../../../shared/schemas/case';
import type { CaseView } from '../../../../shared/schemas/case-view';
import { firstOf, type SearchParams } from '../../../_address/question';
import { attempt, type Attempt } from '../../../_casebook/attempt';
import { caseTitle } from '../../../_casebook/finding-words';
import { pageMetadata } from '../../../_casebook/page-metadata';
import { Breadcrumbs } from '../../../_components/breadcrumbs';
import { formatCounted, formatMonth } from '../../../_components/format-figures';
import { Trouble } from '../../../_components/trouble';
import { capital, inSentence, joinWords } from '../../../_components/words';
import { serverCaller } from '../../../_trpc/server';
import { CaseAfterwards } from '../_parts/case-afterwards';
import { CaseEnding } from '../_parts/case-ending';
import { CasePhotos } from '../_parts/case-photos';
import { CaseReadings } from '../_parts/case-readings';
import { CaseTimeline } from '../_parts/case-timeline';

type PageProps = { params: Promise<{ id: string }>; searchParams: Promise<SearchParams> };

/** The case that an address names, asked for once a page; a word that is no case id names none. */
const attemptCase = cache(async (id: string): Promise<Attempt<CaseView & { reported: number }>> => {
  if (!caseIdSchema.safeParse(id).success) return { value: null, trouble: 'case-not-found' };
  return attempt(() => serverCaller().casebook.getCase({ id }));
});

export async function generateMetadata({ params }: Pick<PageProps, 'params'>): Promise<Metadata> {
  const { value: found } = await attemptCase((await params).id);
  if (!found) return { title: 'No such case' };
  const description = found.narrative.replace(/\s+/g, ' ').trim().slice(0, 200) || 'One repair, told in the order it happened.';
  return pageMetadata({ title: caseTitle(found), description, path: `/cases/${found.id}` });
}

export default async function CasePage({ params, searchParams }: PageProps) {
  const { id } = await params;
  const { value: found, trouble } = await attemptCase(id);
  if (trouble === 'case-not-found') notFound();
  if (trouble) return <Trouble kind={trouble} again={`/cases/${id}`} />;
  const reports = (await attempt(() => serverCaller().afterReport.ofCase({ id }))).value ?? [];
  const photos = (await attempt(() => serverCaller().photo.ofCase({ id }))).value ?? [];
  const present = found.symptoms.filter((symptom) => symptom.present).map((symptom) => inSentence(symptom.label));
  return (
    <article className="case-page">
      <Breadcrumbs above={[{ href: '/cases', label: 'Cases' }]} here={`Case ${found.id}`} />
      <h1>{present.length > 0 ? capital(joinWords(present)) : 'No symptom recorded'}</h1>
      <p className="lead">
        <Link href={`/devices/${found.device.model}${found.device.level === 'board' ? `#${found.device.slug}` : ''}`} prefetch={false}>
          {found.device.label}
        </Link>
        , {formatMonth(found.month)}
      </p>
      {found.reported > 1 ? (
        <p>This repair was reported {formatCounted(found.reported, 'time')}; the figures count it once.</p>
      ) : null}
      <CaseTimeline found={found} />
      <CaseEnding found={found} />
      {found.narrative.trim() === '' ? null : (
        <section className="section">
          <h2>In their words</h2>
          <p className="story">{found.narrative}</p>
        </section>
      )}
      <CasePhotos photos={photos} />
      {firstOf(await searchParams, 'reported') ? (
        <p role="status">Thank you: a moderator looks at what you reported.</p>
      ) : (
        <p className="onward">
          <Link href={`/cases/${id}/report`} prefetch={false} className="row-link">
            Report this case
          </Link>
        </p>
      )}
      <CaseReadings readings={found.readings} />
      <CaseAfterwards id={id} reports={reports} mayReport={found.outcome === 'resolved' || found.outcome === 'partly-resolved'} />
    </article>
  );
}
