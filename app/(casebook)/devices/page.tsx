import type { Metadata } from 'next';
import Link from 'next/link';
import { attempt } from '../../_casebook/attempt';
import { formatCounted } from '../../_components/format-figures';
import { Trouble } from '../../_components/trouble';
import { serverCaller } from '../../_trpc/server';

export const metadata: Metadata = { title: 'Devices' };

export default async function DevicesPage() {
  const { value, trouble } = await attempt(loadDevices);
  if (trouble) return <Trouble kind={trouble} again="/devices" />;
  const { catalogue, choices } = value;
  const casesOf = (slug: string) => choices.find((choice) => choice.slug === slug)?.cases ?? 0;
  return (
    <>
      <h1>Devices</h1>
      <p className="lead">The machines that the casebook knows, with their board revisions and parts.</p>
      <ul className="rows section">
        {catalogue.models.map((model) => (
          <li className="row device-row" key={model.slug}>
            <h2>
              <Link href={`/devices/${model.slug}`} prefetch={false} className="row-link">
                {model.name}
              </Link>
            </h2>
            <p>{model.summary}</p>
            <p className="soft small">
              {model.maker.name} · {formatCounted(model.boards.length, 'board revision')} ·{' '}
              {formatCounted(casesOf(model.slug), 'case')}
            </p>
          </li>
        ))}
      </ul>
    </>
  );
}

async function loadDevices() {
  const { casebook } = serverCaller();
  return { catalogue: await casebook.getCatalogue(), choices: await casebook.listDevices() };
}
