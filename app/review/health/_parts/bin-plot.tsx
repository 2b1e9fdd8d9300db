import { formatCount } from '../../../_components/format-figures';
import { PlotFigure } from '../../../_plots/plot-figure';

type BinPlotProps = { name: string; counted: string; summary: string; rows: readonly { label: string; count: number }[] };

const HEIGHT = 18;

/** Counts as bars from nought: a table whose rows are drawn, with its summary in words above. */
export function BinPlot({ name, counted, summary, rows }: BinPlotProps) {
  const most = Math.max(1, ...rows.map(({ count }) => count));
  return (
    <PlotFigure summary={summary}>
      <table className="plot-table">
        <thead>
          <tr>
            <th scope="col">{name}</th>
            <th scope="col">{counted}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ label, count }) => (
            <tr key={label}>
              <th scope="row">
                <span className="plot-cell">
                  <span>{label}</span>
                  <svg width="100%" height={HEIGHT} aria-hidden="true" focusable="false">
                    <rect className="bar" x="0" y="4" height="10" width={`${((count / most) * 100).toFixed(2)}%`} />
                  </svg>
                </span>
              </th>
              <td className="plot-share">{formatCount(count)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </PlotFigure>
  );
}
