import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { attempt } from '../../_casebook/attempt';
import { formatCount, formatCounted, formatMonth, formatPercent } from '../../_components/format-figures';
import { Trouble } from '../../_components/trouble';
import { capital, PROOF_WORDS } from '../../_components/words';
import { ReviewNav } from '../../_components/review-nav';
import { SharePlot } from '../../_plots/share-plot';
import { serverCaller } from '../../_trpc/server';
import '../../_styles/plots.css';
import '../../_styles/log.css';
import { BinPlot } from './_parts/bin-plot';
import { DeviceConcentration } from './_parts/device-concentration';

export const metadata: Metadata = { title: 'Health', robots: { index: false } };

type Bin = { from: number; to: number | null; count: number };

const dayWords = ({ from, to }: Bin): string => {
  if (to === null) return `${from} days or more`;
  return to - from === 1 ? (from === 0 ? 'less than a day' : `${from} days`) : `${from} to ${to - 1} days`;
};
const dayRows = (bins: readonly Bin[]) => bins.map((bin) => ({ label: dayWords(bin), count: bin.count }));

/** How the moderation stands, for keepers. */
export default async function HealthPage() {
  const account = await serverCaller().account.me();
  if (account === null) redirect('/sign-in?next=/review/health');
  if (account.role !== 'keeper') return <NotForYou />;
  const { value: health, trouble } = await attempt(() => serverCaller().health.overview());
  if (trouble) return <Trouble kind={trouble} again="/review/health" />;
  const { waiting, decisions, decided, proofs } = health;
  const all = decisions.accepted.of;
  return (
    <div className="health-page">
      <ReviewNav />
      <h1>Health</h1>
      <p className="lead">
        How the moderation stands, from {formatMonth(health.since)} on. Times are whole days, and nobody is named.
      </p>
      <section className="section">
        <h2>The queue</h2>
        <BinPlot
          name="Has waited"
          counted="Cases"
          rows={dayRows(waiting.bins)}
          summary={
            waiting.oldestDays === null
              ? 'Nothing waits.'
              : `${formatCounted(waiting.count, 'case')} waiting, the oldest for ${formatCounted(waiting.oldestDays, 'day')}.`
          }
        />
      </section>
      <section className="section">
        <h2>Decisions</h2>
        {all === 0 ? <p>Nothing was decided in these months.</p> : null}
        <SharePlot
          name="Decided"
          unit="decisions"
          rows={
            all === 0
              ? []
              : [
                  { id: 'accepted', label: 'accepted', ...decisions.accepted },
                  { id: 'declined', label: 'declined', ...decisions.declined },
                  { id: 'changes', label: 'changes asked for', ...decisions.changesAsked },
                ]
          }
          summary={`${formatCounted(all, 'decision')}: ${formatPercent(decisions.accepted.count / Math.max(1, all))} accepted, ${formatPercent(decisions.declined.count / Math.max(1, all))} declined.`}
        />
        <BinPlot
          name="Month"
          counted="Decisions"
          rows={decisions.months.map(({ month, count }) => ({ label: formatMonth(month), count }))}
          summary={`Decisions by month, ${formatCount(all)} in all.`}
        />
      </section>
      <section className="section">
        <h2>Time to decision</h2>
        <BinPlot
          name="Had waited"
          counted="Decisions"
          rows={dayRows(decided.bins)}
          summary={
            decided.medianDays === null
              ? 'No decision has said yet how long its case had waited.'
              : `Half of ${formatCounted(decided.count, 'decision')} came within ${formatCounted(decided.medianDays, 'day')}.`
          }
        />
      </section>
      <section className="section">
        <h2>How causes were proved</h2>
        <SharePlot
          name="Proved"
          rows={proofs.map(({ proof, ...share }) => ({ id: proof, label: PROOF_WORDS[proof], ...share }))}
          summary={`${formatCounted(proofs[0]?.of ?? 0, 'accepted case')} with a cause: ${proofs
            .map(({ proof, count, of }) => `${formatPercent(of === 0 ? 0 : count / of)} ${PROOF_WORDS[proof]}`)
            .join(', ')}.`}
        />
      </section>
      <section className="section">
        <h2>{capital('whose evidence it is')}</h2>
        <DeviceConcentration devices={health.devices} />
      </section>
    </div>
  );
}

function NotForYou() {
  return (
    <>
      <h1>Health</h1>
      <p>This page is for keepers of the site.</p>
    </>
  );
}
