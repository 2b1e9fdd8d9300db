import Link from 'next/link';
import type { FixView } from '../../../../shared/schemas/fix-view';
import { Cautions } from '../../../_components/cautions';
import { formatMinutes, formatMoney } from '../../../_components/format-figures';
import { stageLabel } from '../../../_components/stage-mark';
import { capital, INSTRUMENT_WORDS, inSentence, joinWords, NEED_WORDS } from '../../../_components/words';

const RISKS = ['none to speak of', 'slight', 'real: it can hurt the board'] as const;

/** What it takes, what to mind, what to do first, and how it is done: in that order. */
export function FixHow({ view }: { view: FixView }) {
  const tools = [...view.instruments.filter((i) => i !== 'none').map((i) => INSTRUMENT_WORDS[i]), ...view.needs.map((n) => NEED_WORDS[n])];
  return (
    <section className="section">
      <h2>How it is done</h2>
      <dl className="facts">
        <dt>For</dt>
        <dd>
          <ul className="place-list">
            {view.addresses.map((cause) => (
              <li key={cause.id}>
                <Link href={`/parts/${cause.role.id}#${cause.id}`} prefetch={false}>
                  {capital(cause.label)}
                </Link>
              </li>
            ))}
          </ul>
        </dd>
        <dt>Takes</dt>
        <dd>
          {formatMinutes(view.minutes)}; {inSentence(stageLabel(view.stage))} (stage {view.stage})
        </dd>
        <dt>Part costs</dt>
        <dd>{costWords(view.partCostCents)}</dd>
        <dt>Needs</dt>
        <dd>{tools.length > 0 ? capital(joinWords(tools)) : 'Nothing besides the unit'}</dd>
        <dt>Risk to the unit</dt>
        <dd>{capital(RISKS[view.risk])}</dd>
      </dl>
      <Cautions hazards={view.cautions} />
      <p>
        <strong>First:</strong> {view.first}
      </p>
      <p>{view.howTo}</p>
    </section>
  );
}

function costWords({ low, high }: FixView['partCostCents']): string {
  if (high === 0) return 'Nothing';
  return low === high ? formatMoney(low) : `${formatMoney(low)} to ${formatMoney(high)}`;
}
