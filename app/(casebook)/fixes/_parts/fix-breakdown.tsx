import type { FixRecord } from '../../../../shared/schemas/counted-share';
import { ForestPlot } from '../../../_plots/forest-plot';

type FixBreakdownProps = {
  head: string;
  name: string;
  rows: FixRecord[];
  overall: FixRecord;
  summary: string;
  hrefOf: (id: string) => string;
};

/** A fix's record taken apart one way, under its own head; nothing where it was never tried. */
export function FixBreakdown({ head, ...plot }: FixBreakdownProps) {
  if (plot.rows.length === 0) return null;
  return (
    <section className="section">
      <h2>{head}</h2>
      <ForestPlot {...plot} />
    </section>
  );
}
