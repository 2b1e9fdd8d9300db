import { scaleLinear } from 'd3-scale';
import { formatPercent } from '../_components/format-figures';

/** Places along a drawing that is as wide as its cell: shares of the full width as SVG percentages. */
export function percentScale(full: number): (share: number) => string {
  const place = scaleLinear([0, full], [0, 100]).clamp(true);
  return (share) => `${place(share).toFixed(2)}%`;
}

/** Shares at which a drawing of this full width is ruled. */
export function percentTicks(full: number): number[] {
  return scaleLinear([0, full], [0, 100]).ticks(4);
}

/** The scale over a column of bars or points, in the same width as they are. */
export function PercentAxis({ full }: { full: number }) {
  const place = percentScale(full);
  return (
    <svg className="plot-axis" width="100%" height="18" aria-hidden="true" focusable="false">
      {percentTicks(full).map((tick, at, all) => (
        <text key={tick} x={place(tick)} y="13" textAnchor={at === 0 ? 'start' : at === all.length - 1 ? 'end' : 'middle'}>
          {formatPercent(tick)}
        </text>
      ))}
    </svg>
  );
}

/** Rules at the ticks, behind what is drawn in a row. */
export function PercentRules({ full, height }: { full: number; height: number }) {
  const place = percentScale(full);
  return percentTicks(full).map((tick) => (
    <line key={tick} className="plot-rule" x1={place(tick)} x2={place(tick)} y1="0" y2={height} />
  ));
}
