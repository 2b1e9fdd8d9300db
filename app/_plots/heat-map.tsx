import { scaleSqrt } from 'd3-scale';
import Link from 'next/link';
import type { CrossTable } from '../../shared/schemas/counted-share';
import { formatCount, formatPercent } from '../_components/format-figures';
import { capital } from '../_components/words';
import { PlotFigure } from './plot-figure';
import { WideTable } from './wide-table';

type HeatMapProps = {
  table: CrossTable;
  rowHref: (id: string) => string;
  /** Where a cell leads: the cases that have both. */
  cellHref: (row: string, column: string) => string;
};

const SIDE = 22;

/**
 * Which symptom goes with which cause: in each row, the area of a square is the share of that symptom's cases with the
 * cause, and the figure under it says the same. A table that may be wider than a phone scrolls inside its own box.
 */
export function HeatMap({ table, rowHref, cellHref }: HeatMapProps) {
  const { rows, columns, counts } = table;
  if (rows.length === 0 || columns.length === 0) return null;
  const side = scaleSqrt([0, 1], [0, SIDE]);
  return (
    <PlotFigure summary={summaryOf(table)}>
      <WideTable label="Symptoms by causes">
        <table className="heat-map">
          <thead>
            <tr>
              <th scope="col">Symptom</th>
              {columns.map((column) => (
                <th scope="col" key={column.id} className="heat-head">
                  <span>{capital(column.label)}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row, y) => (
              <tr key={row.id}>
                <th scope="row">
                  <Link href={rowHref(row.id)} prefetch={false}>
                    {capital(row.label)}
                  </Link>{' '}
                  <span className="soft small">{formatCount(row.total)}</span>
                </th>
                {columns.map((column, x) => (
                  <HeatCell
                    key={column.id}
                    count={counts[y]?.[x] ?? 0}
                    of={row.total}
                    side={side}
                    href={cellHref(row.id, column.id)}
                  />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </WideTable>
    </PlotFigure>
  );
}

type HeatCellProps = { count: number; of: number; side: (share: number) => number; href: string };

function HeatCell({ count, of, side, href }: HeatCellProps) {
  if (count === 0) return <td className="heat-none">0</td>;
  const share = count / of;
  const edge = Math.max(2, side(share));
  return (
    <td>
      <Link href={href} prefetch={false}>
        <svg width={SIDE} height={SIDE} aria-hidden="true" focusable="false">
          <rect className="bar" x={(SIDE - edge) / 2} y={(SIDE - edge) / 2} width={edge} height={edge} />
        </svg>
        {formatPercent(share)}
        <span className="sr-only">, {formatCount(count)} cases</span>
      </Link>
    </td>
  );
}

/** The three closest pairs in words. */
function summaryOf({ rows, columns, counts }: CrossTable): string {
  const pairs = rows.flatMap((row, y) =>
    columns.map((column, x) => ({ row, column, share: row.total === 0 ? 0 : (counts[y]?.[x] ?? 0) / row.total })),
  );
  const closest = pairs
    .filter(({ share }) => share > 0)
    .sort((a, b) => b.share - a.share)
    .slice(0, 3)
    .map(({ row, column, share }) => `${row.label}: ${column.label} in ${formatPercent(share)}`);
  return `Of the cases with a symptom, how many had which cause; a larger square is a larger share. Closest: ${closest.join('; ')}.`;
}
