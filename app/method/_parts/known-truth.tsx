import { formatCount, formatPercent } from '../../_components/format-figures';
import type { EvaluationView } from '../../../shared/schemas/evaluation';
import { CutTable } from './cut-table';

type KnownTruthProps = { known: NonNullable<EvaluationView['knownTruth']> };

/** The test against an invented world, whose exact probabilities are known, and repairs simulated in it. */
export function KnownTruth({ known: { cuts, repairs } }: KnownTruthProps) {
  return (
    <>
      <h3>Against what is known to be true</h3>
      <p>
        These cases are invented, so the exact probabilities behind them are known. The excess says how much worse the model
        predicts than they would (0 is as good as can be); the bracket should hold the exact chance in about nine of ten.
      </p>
      {cuts.map(({ cut, results }) => (
        <CutTable
          key={cut}
          cut={cut}
          heads={['Excess log loss', 'Bracket holds it', 'Width of a bracket']}
          rows={results.map(({ estimator, excessLogLoss, covered, width }) => ({
            model: estimator,
            figures: [excessLogLoss.toFixed(2), formatPercent(covered), `${Math.round(width * 100)} points`],
          }))}
        />
      ))}
      {repairs === null ? null : <Repairs repairs={repairs} />}
    </>
  );
}

function Repairs({ repairs }: { repairs: NonNullable<KnownTruthProps['known']['repairs']> }) {
  return (
    <>
      <table className="plain-table">
        <caption>
          <strong>{formatCount(repairs.units)} invented units</strong>, repaired by advice and by three habits. A unit that is handed
          over counts {repairs.handOverMinutes} minutes more.
        </caption>
        <thead>
          <tr>
            <th scope="col">Way of working</th>
            <th scope="col">Minutes on average</th>
            <th scope="col">Of these at the bench</th>
            <th scope="col">Repaired</th>
          </tr>
        </thead>
        <tbody>
          {repairs.policies.map(({ policy, minutes, benchMinutes, repaired }) => (
            <tr key={policy}>
              <th scope="row">{policy}</th>
              <td className="figure">
                {minutes.mean.toFixed(0)} ± {minutes.error.toFixed(0)}
              </td>
              <td className="figure">{benchMinutes.toFixed(0)}</td>
              <td className="figure">{formatPercent(repaired)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <ul>
        {repairs.ratios
          .filter(({ policy }) => policy === 'plan' || policy === 'first check')
          .map(({ policy, habit, minutes }) => (
            <li key={`${policy} ${habit}`}>
              {policy === 'plan' ? 'The plan' : 'The first suggested check'} takes {formatPercent(minutes.mean)} of the minutes of “
              {habit}” (± {(100 * minutes.error).toFixed(1)} points).
            </li>
          ))}
      </ul>
    </>
  );
}
