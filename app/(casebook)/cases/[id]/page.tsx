import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { cache } from 'react';
import { caseIdSchema } from '../../../../shared/schemas/case';
import type { CaseView } from '../../../../shared/schemas/case-view';
import { attempt, type Attempt } from '../../../_casebook/attempt';
import { formatCounted, formatMonth } from '../../../_components/format-figures';
import { Trouble } from '../../../_components/trouble';
import { capital, inSentence, joinWords } from '../../../_components/words';
import { serverCaller } from '../../../_trpc/server';
import { CaseEnding } from '../_parts/case-ending';
import { CasePhotos } from '../_parts/case-photos';
import { CaseReadings } from '../_parts/case-readings';
import { CaseTimeline } from '../_parts/case-timeline';

type PageProps = { params: Promise<{ id: string }> };

/** The case that an address names, asked for once a page; a word that is no case id names none. */
const attemptCase = cache(async (id: string): Promise<Attempt<CaseView & { reported: number }>> => {
  if (!caseIdSchema.safeParse(id).success) return { value: null, trouble: 'case-not-found' };
  return attempt(() => serverCaller().casebook.getCase({ id }));
});

export async function generateMetadata({ params }: PageProps): Promise<Metadata> {
  const { value: found } = await attemptCase((await params).id);
  return { title: found ? `${found.device.label}, ${formatMonth(found.month)}` : 'No such case' };
}

export default async function CasePage({ params }: PageProps) {
  const { id } = await params;
  const { value: found, trouble } = await attemptCase(id);
  if (trouble === 'case-not-found') notFound();
  if (trouble) return <Trouble kind={trouble} again={`/cases/${id}`} />;
  const photos = (await attempt(() => serverCaller().photo.ofCase({ id }))).value ?? [];
  const present = found.symptoms.filter((symptom) => symptom.present).map((symptom) => inSentence(symptom.label));
  return (
    <article className="case-page">
      <p className="figure soft">Case {found.id}</p>
      <h1>{present.length > 0 ? capital(joinWords(present)) : 'No symptom recorded'}</h1>
      <p className="lead">
        <Link href={`/cases?on=${found.device.slug}`} prefetch={false}>
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
      <CaseReadings readings={found.readings} />
    </article>
  );
}
