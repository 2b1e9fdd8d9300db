import type { Metadata } from 'next';
import Link from 'next/link';
import type { PartLine } from '../../../shared/schemas/part-view';
import { attempt } from '../../_casebook/attempt';
import { formatCounted } from '../../_components/format-figures';
import { Trouble } from '../../_components/trouble';
import { Volunteered } from '../../_components/volunteered';
import { capital } from '../../_components/words';
import { serverCaller } from '../../_trpc/server';

export const metadata: Metadata = {
  title: 'Parts',
  description: 'Parts by what they do on a board: how often they were the cause, how they fail, and which boards share them.',
};

export default async function PartsPage() {
  const { value: lines, trouble } = await attempt(() => serverCaller().browse.listParts());
  if (trouble) return <Trouble kind={trouble} again="/parts" />;
  return (
    <>
      <h1>Parts</h1>
      <p className="lead">By what they do on a board: how often they were the cause, how they fail, which boards share them.</p>
      <PartList head="On the board" lines={lines.filter((line) => !line.outside)} />
      <PartList head="Outside the unit" lines={lines.filter((line) => line.outside)} />
      <Volunteered />
    </>
  );
}

/** Those that were the cause most often come first. */
function PartList({ head, lines }: { head: string; lines: PartLine[] }) {
  if (lines.length === 0) return null;
  return (
    <section className="section">
      <h2>{head}</h2>
      <ul className="rows">
        {lines
          .toSorted((a, b) => b.cases - a.cases)
          .map((line) => (
            <li className="row browse-row" key={line.id}>
              <Link href={`/parts/${line.id}`} prefetch={false} className="row-link">
                {capital(line.label)}
              </Link>
              <span className="figure">
                {line.cases === 0 ? 'never the cause' : `the cause in ${formatCounted(line.cases, 'case')}`}
              </span>
              <span className="soft browse-told">
                {line.meaning}
                {line.boards > 0 ? ` On ${formatCounted(line.boards, 'board revision')}.` : ''}
              </span>
            </li>
          ))}
      </ul>
    </section>
  );
}
