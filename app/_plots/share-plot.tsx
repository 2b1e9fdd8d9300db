import Link from 'next/link';
import type { CountedShare } from '../../shared/schemas/counted-share';
import { barScale } from '../_components/bar-scale';
import { formatCount, formatPercent, formatPercentRange } from '../_components/format-figures';
import { capital } from '../_components/words';
import { PercentAxis, PercentRules, percentScale } from './percent-axis';
import { PlotFigure } from './plot-figure';

/** One bar: what it is of, where it leads, and so many of so many. */
export type ShareRow = CountedShare & { id: string; label: string; href?: string; /** Where links to this row lead. */ anchor?: string };

type SharePlotProps = {
  /** What the rows are, for the head of the column: "Cause". */
  name: string;
  rows: readonly ShareRow[];
  summary: string;
  /** What is counted: "cases". */
  unit?: string;
};

const HEIGHT = 18;

/** Counted shares as bars from nought with brackets over their 90 % intervals: a table whose rows are drawn. */
export function SharePlot({ name, rows, summary, unit = 'cases' }: SharePlotProps) {
  if (rows.length === 0) return null;
  const full = barScale(rows.map((row) => row.high));
  return (
    <PlotFigure summary={summary}>
      <table className="plot-table">
        <thead>
          <tr>
            <th scope="col">
              <span className="plot-cell">
                <span>{name}</span>
                <PercentAxis full={full} />
              </span>
            </th>
            <th scope="col">Share</th>
            <th scope="col">{capital(unit)}, 90% interval</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.id} id={row.anchor}>
              <th scope="row">
                <span className="plot-cell">
                  <PlotName label={row.label} href={row.href} />
                  <ShareMark row={row} full={full} />
                </span>
              </th>
              <td className="plot-share">{row.of === 0 ? '–' : formatPercent(row.count / row.of)}</td>
              <td className="plot-counts">
                {formatCount(row.count)} of {formatCount(row.of)}{' '}
                <span className="soft">({formatPercentRange(row.low, row.high)})</span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </PlotFigure>
  );
}

function ShareMark({ row, full }: { row: ShareRow; full: number }) {
  const place = percentScale(full);
  const share = row.of === 0 ? 0 : row.count / row.of;
  return (
    <svg width="100%" height={HEIGHT} aria-hidden="true" focusable="false">
      <PercentRules full={full} height={HEIGHT} />
      <rect className="bar" x="0" y="4" height="10" width={place(share)} />
      <line className="line-bracket" x1={place(row.low)} x2={place(row.high)} y1="9" y2="9" />
      <line className="line-bracket" x1={place(row.low)} x2={place(row.low)} y1="3" y2="15" />
      <line className="line-bracket" x1={place(row.high)} x2={place(row.high)} y1="3" y2="15" />
    </svg>
  );
}

/** The name of a row, which leads to its page where it has one. */
export function PlotName({ label, href }: { label: string; href?: string }) {
  return href === undefined ? (
    <span>{capital(label)}</span>
  ) : (
    <Link href={href} prefetch={false} className="plot-link">
      {capital(label)}
    </Link>
  );
}
