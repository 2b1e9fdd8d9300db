import { symbol, symbolDiamond2, symbolSquare } from 'd3-shape';
import type { FixRecord } from '../../shared/schemas/counted-share';
import { formatCount, formatPercent, formatPercentRange } from '../_components/format-figures';
import { PercentAxis, PercentRules, percentScale } from './percent-axis';
import { PlotFigure } from './plot-figure';
import { PlotName } from './share-plot';

type ForestPlotProps = {
  /** What the rows are: "Fix", "Device". */
  name: string;
  rows: readonly FixRecord[];
  /** Everything together, drawn as a diamond under the rows; left out where the rows are not parts of one whole. */
  overall?: FixRecord;
  hrefOf?: (id: string) => string;
  summary: string;
};

const HEIGHT = 24;
const MIDDLE = HEIGHT / 2;

/**
 * A forest plot of shares cured: a square for each row, larger where more was tried, on a line as long as its 90 % interval;
 * a diamond for all together, with an upright line through it. Every row says the same in figures.
 */
export function ForestPlot({ name, rows, overall, hrefOf, summary }: ForestPlotProps) {
  if (rows.length === 0) return null;
  const most = Math.max(...rows.map((row) => row.tried), 1);
  return (
    <PlotFigure summary={summary}>
      <table className="plot-table">
        <thead>
          <tr>
            <th scope="col">
              <span className="plot-cell">
                <span>{name}</span>
                <PercentAxis full={1} />
              </span>
            </th>
            <th scope="col">Cured</th>
            <th scope="col">Tries, 90% interval</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <Row key={row.id} row={row} href={hrefOf?.(row.id)} most={most} line={overall?.estimate} />
          ))}
          {overall ? <Row row={{ ...overall, label: 'All together' }} most={most} line={overall.estimate} whole /> : null}
        </tbody>
      </table>
    </PlotFigure>
  );
}

type RowProps = { row: FixRecord; href?: string; most: number; line?: number; whole?: boolean };

function Row({ row, href, most, line, whole = false }: RowProps) {
  return (
    <tr className={whole ? 'plot-whole' : undefined}>
      <th scope="row">
        <span className="plot-cell">
          <PlotName label={row.label} href={href} />
          <Mark row={row} most={most} line={line} whole={whole} />
        </span>
      </th>
      <td className="plot-share">{row.tried === 0 ? '–' : formatPercent(row.estimate)}</td>
      <td className="plot-counts">
        {triedWords(row)}{' '}
        {row.tried === 0 ? null : <span className="soft">({formatPercentRange(row.low, row.high)})</span>}
      </td>
    </tr>
  );
}

function Mark({ row, most, line, whole = false }: Omit<RowProps, 'href'>) {
  const place = percentScale(1);
  if (row.tried === 0) return null;
  const shape = whole ? symbol(symbolDiamond2, 130) : symbol(symbolSquare, 24 + 116 * (row.tried / most));
  return (
    <svg width="100%" height={HEIGHT} aria-hidden="true" focusable="false">
      <PercentRules full={1} height={HEIGHT} />
      {line === undefined ? null : <line className="line-nought" x1={place(line)} x2={place(line)} y1="0" y2={HEIGHT} />}
      <line className="line-bracket" x1={place(row.low)} x2={place(row.high)} y1={MIDDLE} y2={MIDDLE} />
      {/* A nested drawing carries the shape to a place that is known in percent only. */}
      {/* biome-ignore lint/a11y/noSvgWithoutTitle: part of a drawing that is hidden from readers, who get the figures */}
      <svg x={place(row.estimate)} y={MIDDLE} overflow="visible" className={whole ? 'plot-diamond' : 'plot-square'}>
        <path d={shape() ?? ''} />
      </svg>
    </svg>
  );
}

/** `cured 3 of 9, partly 1, made worse 1`; what did not happen is left out. */
export function triedWords(row: Pick<FixRecord, 'tried' | 'resolved' | 'partly' | 'madeWorse'>): string {
  if (row.tried === 0) return 'never tried';
  const parts = [`${formatCount(row.resolved)} of ${formatCount(row.tried)}`];
  if (row.partly > 0) parts.push(`partly ${formatCount(row.partly)}`);
  if (row.madeWorse > 0) parts.push(`made worse ${formatCount(row.madeWorse)}`);
  return parts.join(', ');
}
