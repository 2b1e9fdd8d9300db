import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { cache } from 'react';
import { slugSchema } from '../../../../../shared/schemas/terms';
import { attempt } from '../../../../_casebook/attempt';
import { pageMetadata } from '../../../../_casebook/page-metadata';
import { Breadcrumbs } from '../../../../_components/breadcrumbs';
import { formatCounted } from '../../../../_components/format-figures';
import { Trouble } from '../../../../_components/trouble';
import { Volunteered } from '../../../../_components/volunteered';
import { serverCaller } from '../../../../_trpc/server';
import { UsualReadings } from '../../_parts/usual-readings';

type PageProps = { params: Promise<{ slug: string }> };

/** The readings of the board that an address names, asked for once a page. */
const attemptReadings = cache(async (slug: string) =>
  slugSchema.safeParse(slug).success
    ? attempt(() => serverCaller().browse.getBoardReadings({ slug }))
    : ({ value: null, trouble: 'device-not-found' } as const),
);

export async function generateMetadata({ params }: PageProps): Promise<Metadata> {
  const { slug } = await params;
  const { value: readings } = await attemptReadings(slug);
  if (!readings) return { title: 'No such board' };
  return pageMetadata({
    title: `Usual readings of ${readings.board.label}, from ${formatCounted(readings.units, 'working unit')}`,
    description: 'What working units show, part by part and pin by pin.',
    path: `/devices/${slug}/readings`,
  });
}

export default async function ReadingsPage({ params }: PageProps) {
  const { slug } = await params;
  const { value: readings, trouble } = await attemptReadings(slug);
  if (trouble === 'device-not-found') notFound();
  if (trouble) return <Trouble kind={trouble} again={`/devices/${slug}/readings`} />;
  const above = [
    { href: '/devices', label: 'Devices' },
    { href: `/devices/${slug}`, label: readings.board.label },
  ];
  return (
    <>
      <Breadcrumbs above={above} here="Usual readings" />
      <h1>Usual readings of {readings.board.label}</h1>
      <UsualReadings readings={readings} />
      <Volunteered />
    </>
  );
}
