import type { Metadata } from 'next';
import Link from 'next/link';
import { attempt } from '../../_casebook/attempt';
import { formatCount, formatCounted, formatPercent } from '../../_components/format-figures';
import { Trouble } from '../../_components/trouble';
import { Volunteered } from '../../_components/volunteered';
import { inSentence } from '../../_components/words';
import { HeatMap } from '../../_plots/heat-map';
import { serverCaller } from '../../_trpc/server';
import { OverTime } from '../_parts/over-time';

export const metadata: Metadata = {
  title: 'The casebook',
  description: 'What repairers found: symptoms, devices, parts, fixes and cases, counted with intervals.',
};

const COMMONEST = 8;

export default async function CasebookPage() {
  const { value, trouble } = await attempt(async () => {
    const { browse, casebook } = serverCaller();
    return { counts: await casebook.overview(), overview: await browse.overview(), symptoms: await browse.listSymptoms() };
  });
  if (trouble) return <Trouble kind={trouble} again="/casebook" />;
  const { counts, overview, symptoms } = value;
  const commonest = symptoms
    .filter((line) => line.cases > 0)
    .sort((a, b) => b.cases - a.cases)
    .slice(0, COMMONEST);
  return (
    <>
      <h1>The casebook</h1>
      <p className="lead">
        {formatCounted(counts.cases, 'repair')} of {formatCounted(counts.devices, 'machine')}, told by the people who did them,
        and readings of {formatCounted(counts.workingUnits, 'working unit')}.
      </p>
      <ul className="rooms-list section">
        <Room href="/symptoms" name="Symptoms" told="What units do, and what it usually was." />
        <Room href="/devices" name="Devices" told="Common faults, weak spots, usual readings." />
        <Room href="/parts" name="Parts" told="How they fail, how to check them, who can lend one." />
        <Room href="/fixes" name="Fixes" told="What cured, how often, and what it takes." />
        <Room href="/cases" name="Cases" told="Every repair, in the order it happened." />
        <Room href="/data" name="Data" told="All of it to take away, and an interface for programs." />
      </ul>
      {commonest.length === 0 ? (
        <section className="section">
          <h2>No case yet</h2>
          <p>The words are there, the cases are not. Yours could be the first.</p>
          <p className="onward">
            <Link href="/post" prefetch={false} className="press">
              Post a case
            </Link>
          </p>
        </section>
      ) : (
        <section className="section">
          <h2>Seen most often</h2>
          <ul className="rows">
            {commonest.map((line) => (
              <li className="row browse-row" key={line.id}>
                <Link href={`/symptoms/${line.id}`} prefetch={false} className="row-link">
                  {line.label}
                </Link>
                <span className="figure">{formatCount(line.cases)}</span>
                <span className="soft browse-told">
                  {line.leading
                    ? `most often ${inSentence(line.leading.label)}, ${formatPercent(line.leading.count / line.leading.of)}`
                    : 'no cause found yet'}
                </span>
              </li>
            ))}
          </ul>
        </section>
      )}
      <OverTime months={overview.months} />
      {overview.together.rows.length > 0 ? (
        <section className="section">
          <h2>What goes with what</h2>
          <HeatMap
            table={overview.together}
            rowHref={(id) => `/symptoms/${id}`}
            cellHref={(symptom, cause) => `/cases?${new URLSearchParams({ symptom, cause })}`}
          />
        </section>
      ) : null}
      <Volunteered />
    </>
  );
}

function Room({ href, name, told }: { href: string; name: string; told: string }) {
  return (
    <li>
      <Link href={href} prefetch={false} className="row-link">
        <strong>{name}</strong>
      </Link>
      <p className="soft small">{told}</p>
    </li>
  );
}
