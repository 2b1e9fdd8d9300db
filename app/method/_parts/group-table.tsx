import { formatCount, formatPercent } from '../../_components/format-figures';
import type { EvaluationView } from '../../../shared/schemas/evaluation';

type GroupTableProps = { summary: string; name: string; groups: EvaluationView['byDevice'] };

/** Scores per device or per cause, folded away. */
export function GroupTable({ summary, name, groups }: GroupTableProps) {
  if (groups.length === 0) return null;
  return (
    <details>
      <summary>{summary}</summary>
      <table className="plain-table">
        <caption className="aside">Before the first fix; predictions over all rounds</caption>
        <thead>
          <tr>
            <th scope="col">{name}</th>
            <th scope="col">Predictions</th>
            <th scope="col">First right</th>
            <th scope="col">Log loss</th>
          </tr>
        </thead>
        <tbody>
          {groups.map(({ label, count, accuracy, logLoss }) => (
            <tr key={label}>
              <th scope="row">{label}</th>
              <td className="figure">{formatCount(count)}</td>
              <td className="figure">{formatPercent(accuracy)}</td>
              <td className="figure">{logLoss.toFixed(2)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
