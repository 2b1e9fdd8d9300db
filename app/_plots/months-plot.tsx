import { scaleBand, scaleLinear } from 'd3-scale';
import type { MonthCount } from '../../shared/schemas/counted-share';
import { formatCount, formatCounted, formatMonth } from '../_components/format-figures';
import { PlotFigure } from './plot-figure';
import { WideTable } from './wide-table';

const HEIGHT = 110;
const FOOT = 20;

/** Cases by the month of the repair: bars, and behind them the figures year by year. Fewer than two months draw nothing. */
export function MonthsPlot({ months }: { months: readonly MonthCount[] }) {
  if (months.length < 2) return null;
  const across = scaleBand(months.map((m) => m.month), [0, 100]).paddingInner(0.2);
  const most = Math.max(...months.map((m) => m.count), 1);
  const up = scaleLinear([0, most], [0, HEIGHT]).nice(3);
  const place = (month: string) => `${(across(month) ?? 0).toFixed(3)}%`;
  const ticks = up.ticks(3).filter(Number.isInteger);
  return (
    <PlotFigure summary={summaryOf(months)}>
      <div className="months">
        <svg className="months-scale" width="34" height={HEIGHT + FOOT} aria-hidden="true" focusable="false">
          {ticks.map((tick) => (
            <text key={tick} x="30" y={HEIGHT - up(tick) + 9} textAnchor="end">
              {formatCount(tick)}
            </text>
          ))}
        </svg>
        <svg width="100%" height={HEIGHT + FOOT} aria-hidden="true" focusable="false">
          {ticks.map((tick) => (
            <line key={tick} className="plot-rule" x1="0" x2="100%" y1={HEIGHT - up(tick) + 5} y2={HEIGHT - up(tick) + 5} />
          ))}
          {months.map(({ month, count }) => (
            <rect
              key={month}
              className="bar"
              x={place(month)}
              width={`${across.bandwidth().toFixed(3)}%`}
              y={HEIGHT - up(count) + 5}
              height={up(count)}
            />
          ))}
          {yearMarks(months).map((month) => (
            <text key={month} x={place(month)} y={HEIGHT + FOOT - 2}>
              {month.slice(0, 4)}
            </text>
          ))}
        </svg>
      </div>
      <details>
        <summary>The figures behind the drawing</summary>
        <YearTable months={months} />
      </details>
    </PlotFigure>
  );
}

/** The months under which a year is written: its January, or where it begins; not more than eight of them. */
function yearMarks(months: readonly MonthCount[]): string[] {
  const firsts = months.filter(({ month }, at) => at === 0 || month.endsWith('-01')).map(({ month }) => month);
  // A year that begins just before the next would be written over by it.
  const apart = firsts.filter((month, at) => at > 0 || firsts[1] === undefined || Number(month.slice(5)) < 7);
  const every = Math.ceil(apart.length / 8);
  return apart.filter((_, at) => at % every === 0);
}

function YearTable({ months }: { months: readonly MonthCount[] }) {
  const years = [...new Set(months.map(({ month }) => month.slice(0, 4)))];
  const countOf = new Map(months.map(({ month, count }) => [month, count]));
  const numbers = Array.from({ length: 12 }, (_, at) => String(at + 1).padStart(2, '0'));
  return (
    <WideTable label="Cases by month">
      <table className="plain-table month-table">
        <thead>
          <tr>
            <th scope="col">Year</th>
            <th scope="col">All</th>
            {numbers.map((number) => (
              <th scope="col" key={number}>
                {number}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {years.map((year) => (
            <tr key={year}>
              <th scope="row">{year}</th>
              <td className="figure">
                {formatCount(numbers.reduce((sum, number) => sum + (countOf.get(`${year}-${number}`) ?? 0), 0))}
              </td>
              {numbers.map((number) => (
                <td className="figure" key={number}>
                  {countOf.get(`${year}-${number}`) ?? '–'}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </WideTable>
  );
}

function summaryOf(months: readonly MonthCount[]): string {
  const total = months.reduce((sum, m) => sum + m.count, 0);
  const fullest = months.reduce((best, m) => (m.count > best.count ? m : best));
  const [first, last] = [months[0] as MonthCount, months.at(-1) as MonthCount];
  return `${formatCounted(total, 'case')} from ${formatMonth(first.month)} to ${formatMonth(last.month)}; most in ${formatMonth(fullest.month)} (${formatCount(fullest.count)}).`;
}
