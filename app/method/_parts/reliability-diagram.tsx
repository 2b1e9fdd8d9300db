import { formatCount, formatPercent } from '../../_components/format-figures';
import type { BracketBinView, EvaluationView } from '../../../shared/schemas/evaluation';

const SIZE = 300;
/** Room for the numbers on the axes. */
const LEFT = 46;
const TOP = 10;
const WIDTH = LEFT + SIZE + 14;
const HEIGHT = TOP + SIZE + 44;
const TICKS = [0, 0.25, 0.5, 0.75, 1];

const across = (share: number) => LEFT + share * SIZE;
const up = (share: number) => TOP + (1 - share) * SIZE;

type ReliabilityDiagramProps = { brackets: NonNullable<EvaluationView['brackets']> };

/** Stated chances against what was: a drawing, a sentence that says the same, and the figures behind it. */
export function ReliabilityDiagram({ brackets }: ReliabilityDiagramProps) {
  const bins = brackets.bins.filter(({ count }) => count > 0);
  return (
    <figure className="reliability">
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={summaryOf(bins)}>
        <rect className="bar-outline" x={LEFT} y={TOP} width={SIZE} height={SIZE} />
        {TICKS.map((tick) => (
          <g key={tick} className="reliability-tick">
            <line x1={across(tick)} y1={TOP} x2={across(tick)} y2={TOP + SIZE} />
            <line x1={LEFT} y1={up(tick)} x2={LEFT + SIZE} y2={up(tick)} />
            <text x={across(tick)} y={TOP + SIZE + 17} textAnchor="middle">
              {formatPercent(tick)}
            </text>
            <text x={LEFT - 6} y={up(tick) + 4} textAnchor="end">
              {formatPercent(tick)}
            </text>
          </g>
        ))}
        <text className="reliability-axis" x={across(0.5)} y={HEIGHT - 6} textAnchor="middle">
          chance stated
        </text>
        <line className="reliability-even" x1={across(0)} y1={up(0)} x2={across(1)} y2={up(1)} />
        {bins.map((bin) => (
          <g key={bin.low}>
            <line
              className="reliability-bracket"
              x1={across(bin.stated)}
              x2={across(bin.stated)}
              y1={up(bin.bracketLow)}
              y2={up(bin.bracketHigh)}
            />
            <circle className="reliability-point" cx={across(bin.stated)} cy={up(bin.observed)} r="4.5" />
          </g>
        ))}
      </svg>
      <figcaption>
        How often it was that cause (up) against the chance stated (across). A point on the slanting line is a chance that came
        true as often as it said; the upright stroke is the mean bracket.
      </figcaption>
      <details>
        <summary>The figures behind the drawing</summary>
        <table className="plain-table">
          <caption className="aside">Stated chances of at least 1%, {formatCount(brackets.pairs)} in all</caption>
          <thead>
            <tr>
              <th scope="col">Chance from – to</th>
              <th scope="col">Stated so often</th>
              <th scope="col">Mean stated</th>
              <th scope="col">Mean bracket</th>
              <th scope="col">It was that cause</th>
            </tr>
          </thead>
          <tbody>
            {bins.map((bin) => (
              <tr key={bin.low}>
                <th scope="row" className="figure">
                  {formatPercent(bin.low)} – {formatPercent(bin.high)}
                </th>
                <td className="figure">{formatCount(bin.count)}</td>
                <td className="figure">{formatPercent(bin.stated)}</td>
                <td className="figure">
                  {formatPercent(bin.bracketLow)} – {formatPercent(bin.bracketHigh)}
                </td>
                <td className="figure">{formatPercent(bin.observed)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </figure>
  );
}

/** What the drawing shows, in a sentence: the bins that are furthest off, and by how much. */
function summaryOf(bins: readonly BracketBinView[]): string {
  const off = (bin: BracketBinView) => Math.abs(bin.observed - bin.stated);
  const worst = bins.reduce((a, b) => (off(b) > off(a) ? b : a), bins[0] as BracketBinView);
  const points = bins.map((bin) => `${formatPercent(bin.stated)} stated, ${formatPercent(bin.observed)} observed`).join('; ');
  return `Reliability of stated chances: ${points}. Furthest off where ${formatPercent(worst.stated)} was stated.`;
}
