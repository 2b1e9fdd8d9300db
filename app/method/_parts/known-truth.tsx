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
  const advice = ['plan', 'first check'].filter((name) => repairs.ratios.some(({ policy }) => policy === name));
  const habits = [...new Set(repairs.ratios.map(({ habit }) => habit))];
  return (
    <>
      <table className="plain-table">
        <caption>
          <strong>{formatCount(repairs.units)} invented units</strong>, repaired by advice and by three habits, each plain and
          learning from the look-up. A unit that is handed over counts {repairs.handOverMinutes} minutes more.
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
      <table className="plain-table">
        <caption>
          <strong>Minutes of the advice in hundredths of a habit’s.</strong> A plain habit goes down a list that is set at the outset. The
          others learn from the look-up after every failure, what to pass over and when to stop included.
        </caption>
        <thead>
          <tr>
            <th scope="col">Habit</th>
            {advice.map((policy) => (
              <th key={policy} scope="col">
                {policy === 'plan' ? 'The plan' : 'The first suggested check'}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {habits.map((habit) => (
            <tr key={habit}>
              <th scope="row">{habit}</th>
              {advice.map((policy) => {
                const ratio = repairs.ratios.find((known) => known.policy === policy && known.habit === habit);
                return (
                  <td key={policy} className="figure">
                    {ratio === undefined ? '–' : `${formatPercent(ratio.minutes.mean)} ± ${(100 * ratio.minutes.error).toFixed(1)}`}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
