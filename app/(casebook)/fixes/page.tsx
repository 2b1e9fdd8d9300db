import type { Metadata } from 'next';
import Link from 'next/link';
import { attempt } from '../../_casebook/attempt';
import { formatMinutes, formatPercent, formatPercentRange } from '../../_components/format-figures';
import { ShareBar } from '../../_components/share-bar';
import { Trouble } from '../../_components/trouble';
import { Volunteered } from '../../_components/volunteered';
import { triedWords } from '../../_plots/forest-plot';
import { serverCaller } from '../../_trpc/server';

export const metadata: Metadata = {
  title: 'Fixes',
  description: 'What was done to cure units, how often it was tried, and how often it cured.',
};

export default async function FixesPage() {
  const { value: lines, trouble } = await attempt(() => serverCaller().browse.listFixes());
  if (trouble) return <Trouble kind={trouble} again="/fixes" />;
  const never = lines.filter((line) => line.tried === 0);
  return (
    <>
      <h1>Fixes</h1>
      <p className="lead">
        What was done to cure units. Those that cured most surely come first: by the lower end of the interval, so that one cure
        in one try does not beat forty in fifty.
      </p>
      <ul className="rows section">
        {lines
          .filter((line) => line.tried > 0)
          .map((line) => (
            <li className="row fix-row" key={line.id}>
              <Link href={`/fixes/${line.id}`} prefetch={false} className="row-link">
                {line.label}
              </Link>
              <ShareBar share={line.estimate} low={line.low} high={line.high} />
              <span className="cause-share">{formatPercent(line.estimate)}</span>
              <span className="cause-count">
                cured {triedWords(line)} (<span className="figure">{formatPercentRange(line.low, line.high)}</span>) ·{' '}
                {formatMinutes(line.minutes)}, stage {line.stage}
              </span>
            </li>
          ))}
      </ul>
      {never.length > 0 ? (
        <section className="section">
          <h2>Not tried yet</h2>
          <ul className="rows">
            {never.map((line) => (
              <li className="row browse-row" key={line.id}>
                <Link href={`/fixes/${line.id}`} prefetch={false} className="row-link">
                  {line.label}
                </Link>
                <span className="soft">
                  {formatMinutes(line.minutes)}, stage {line.stage}
                </span>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      <Volunteered />
    </>
  );
}
