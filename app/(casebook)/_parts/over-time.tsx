import type { MonthCount } from '../../../shared/schemas/counted-share';
import { MonthsPlot } from '../../_plots/months-plot';

/** Cases over time, under its own head; nothing where there is no time to speak of. */
export function OverTime({ months }: { months: readonly MonthCount[] }) {
  if (months.length < 2) return null;
  return (
    <section className="section">
      <h2>Cases over time</h2>
      <MonthsPlot months={months} />
    </section>
  );
}
