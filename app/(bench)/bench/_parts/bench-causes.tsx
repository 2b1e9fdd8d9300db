'use client';

import type { BenchAnswer, BenchCause } from '../../../../shared/domain/bench/answer-bench';
import { barScale } from '../../../_components/bar-scale';
import { formatCount, formatPercent, formatPercentRange } from '../../../_components/format-figures';
import { ShareBar } from '../../../_components/share-bar';
import { capital } from '../../../_components/words';

/** The likeliest causes with their intervals and the cases behind them; the share of none of these at the end. */
export function BenchCauses({ answer }: { answer: BenchAnswer }) {
  const { causes, unlisted, cases } = answer;
  const full = barScale([...causes, unlisted].map(({ probability, interval }) => interval?.high ?? probability));
  return (
    <section className="section" aria-labelledby="bench-causes-head">
      <h2 id="bench-causes-head">Likely causes</h2>
      <p className="section-sub">
        From {formatCount(cases.matching)} matching cases of {formatCount(cases.total)}, {formatCount(cases.matchingOnDevice)} of{' '}
        {formatCount(cases.onDevice)} on this device. Modelled for a single fault; the bracket holds 90%. Cases are volunteered, not
        sampled. <a href="/method">How it is reckoned</a>
      </p>
      {cases.matching < 10 ? <p className="note">Few cases match: the figures lean on what is known of other devices and faults.</p> : null}
      <ol className="rows">
        {causes.map((cause) => (
          <li className="row" key={cause.id}>
            <Figures name={nameOf(cause)} of={cause} full={full} words={countWords(cause, cases.matching)} />
          </li>
        ))}
        <li className="row unlisted">
          <Figures name="None on record" of={unlisted} full={full} words="a cause that is on no record yet" hatched />
        </li>
      </ol>
    </section>
  );
}

type FiguresProps = {
  name: string;
  of: Pick<BenchCause, 'probability' | 'interval'>;
  full: number;
  words: string;
  hatched?: boolean;
};

function Figures({ name, of: { probability, interval }, full, words, hatched = false }: FiguresProps) {
  const { low, high } = interval ?? { low: probability, high: probability };
  return (
    <div className="cause-head">
      <span className="cause-name">{name}</span>
      <span className="cause-share">{formatPercent(probability)}</span>
      <ShareBar share={probability} low={low} high={high} full={full} hatched={hatched} />
      <span className="cause-count">
        <span className="figure">{interval ? formatPercentRange(low, high) : '…'}</span> · {words}
      </span>
    </div>
  );
}

function nameOf({ label, designators }: BenchCause): string {
  const [first] = designators;
  return `${capital(label)}${first ? ` · ${designators.length === 1 ? first.designator : `${first.designator} …`}` : ''}`;
}

function countWords({ matching }: BenchCause, all: number): string {
  return all === 0 ? 'no matching case' : `${formatCount(matching)} of ${formatCount(all)} matching cases`;
}
