import type { Metadata } from 'next';
import Link from 'next/link';
import type { Vocabulary } from '../../../shared/schemas/vocabulary';
import { firstOf, type SearchParams } from '../../_address/question';
import { attempt } from '../../_casebook/attempt';
import { Trouble } from '../../_components/trouble';
import { serverCaller } from '../../_trpc/server';
import { CaseLine } from './_parts/case-line';
import { DeviceFilter } from './_parts/device-filter';
import { type CaseFilter, FilterTags } from './_parts/filter-tags';
import { slugOf } from './_parts/slug-of';

export const metadata: Metadata = { title: 'Cases', description: 'Accepted cases, the latest months first.' };

type PageProps = { searchParams: Promise<SearchParams> };

export default async function CasesPage({ searchParams }: PageProps) {
  const params = await searchParams;
  const device = slugOf(params, 'on');
  const narrowed = {
    symptom: slugOf(params, 'symptom'),
    cause: slugOf(params, 'cause'),
    fix: slugOf(params, 'fix'),
    part: slugOf(params, 'part'),
  };
  const { casebook } = serverCaller();
  const devices = (await attempt(() => casebook.listDevices())).value ?? [];
  const { value: vocabulary } = await attempt(() => casebook.listVocabulary());
  const { value: page, trouble } = await attempt(() =>
    casebook.listCases({ device, ...narrowed, cursor: firstOf(params, 'from') }),
  );
  const keep = Object.entries(narrowed).flatMap(([name, value]): [string, string][] => (value ? [[name, value]] : []));
  const pairs: [string, string][] = [...(device ? ([['on', device]] as [string, string][]) : []), ...keep];
  return (
    <>
      <h1>Cases</h1>
      <p className="lead">Accepted cases, the latest months first.</p>
      <FilterTags filters={keep.map(([kind, id]) => filterOf(vocabulary, kind, id))} pairs={pairs} />
      <DeviceFilter devices={devices} device={device} action="/cases" keep={keep} />
      {trouble ? <Trouble kind={trouble} again="/cases" /> : null}
      {page?.cases.length === 0 ? <p>No such case yet. Choose another device, or drop what narrows the list.</p> : null}
      <ol className="rows section">
        {page?.cases.map((item) => (
          <CaseLine key={item.id} item={item} />
        ))}
      </ol>
      {page?.next ? (
        <p className="pager">
          <Link href={`/cases?${new URLSearchParams([...pairs, ['from', page.next]])}`} prefetch={false} className="press">
            Earlier cases
          </Link>
        </p>
      ) : null}
    </>
  );
}

/** What narrows the list, in words and with its page. */
function filterOf(vocabulary: Vocabulary | null, kind: string, id: string): CaseFilter {
  const labelIn = (entries?: readonly { slug: string; label: string }[]) => entries?.find((e) => e.slug === id)?.label ?? id;
  const role = vocabulary?.causes.find((cause) => cause.slug === id)?.role;
  switch (kind) {
    case 'symptom':
      return { kind, id, label: labelIn(vocabulary?.symptoms), told: 'with', href: `/symptoms/${id}` };
    case 'cause':
      return { kind, id, label: labelIn(vocabulary?.causes), told: 'found', href: role ? `/parts/${role}#${id}` : null };
    case 'fix':
      return { kind, id, label: labelIn(vocabulary?.fixes), told: 'tried', href: `/fixes/${id}` };
    default:
      return { kind, id, label: labelIn(vocabulary?.roles), told: 'cause in', href: `/parts/${id}` };
  }
}
