import type { Metadata } from 'next';
import Link from 'next/link';
import { slugSchema } from '../../../shared/schemas/terms';
import { firstOf, type SearchParams } from '../../_address/question';
import { attempt } from '../../_casebook/attempt';
import { Trouble } from '../../_components/trouble';
import { serverCaller } from '../../_trpc/server';
import { CaseLine } from './_parts/case-line';
import { DeviceFilter } from './_parts/device-filter';

export const metadata: Metadata = { title: 'Cases' };

type PageProps = { searchParams: Promise<SearchParams> };

export default async function CasesPage({ searchParams }: PageProps) {
  const params = await searchParams;
  const parsed = slugSchema.safeParse(firstOf(params, 'on') ?? '');
  const device = parsed.success ? parsed.data : null;
  const { casebook } = serverCaller();
  const devices = (await attempt(() => casebook.listDevices())).value ?? [];
  const { value: page, trouble } = await attempt(() => casebook.listCases({ device, cursor: firstOf(params, 'from') }));
  const pageHref = (from: string) => `/cases?${new URLSearchParams({ ...(device ? { on: device } : {}), from })}`;
  return (
    <>
      <h1>Cases</h1>
      <p className="lead">Accepted cases, the latest months first.</p>
      <DeviceFilter devices={devices} device={device} />
      {trouble ? <Trouble kind={trouble} again="/cases" /> : null}
      {page?.cases.length === 0 ? <p>No case here yet. Choose another device, or any device.</p> : null}
      <ol className="rows section">
        {page?.cases.map((item) => (
          <CaseLine key={item.id} item={item} />
        ))}
      </ol>
      {page?.next ? (
        <p className="pager">
          <Link href={pageHref(page.next)} prefetch={false} className="press">
            Earlier cases
          </Link>
        </p>
      ) : null}
    </>
  );
}
