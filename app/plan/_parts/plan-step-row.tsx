import type { PlanOptions, PlanStep } from '../../../shared/schemas/plan';
import { planOptionPairs } from '../../_address/plan-options';
import { questionHref, type Question } from '../../_address/question';
import type { VocabularyEntry } from '../../_address/vocabulary-entry';
import { AddressLink } from '../../_components/address-link';
import { Cautions } from '../../_components/cautions';
import { ChanceBar } from '../../_components/chance-bar';
import { formatMinutes, formatMoney, formatPercent } from '../../_components/format-figures';
import { StageMark, stageLabel } from '../../_components/stage-mark';
import { capital } from '../../_components/words';
import { RecordStep } from './record-step';

type PlanStepRowProps = {
  question: Question;
  options: PlanOptions;
  step: PlanStep;
  number: number;
  entry: VocabularyEntry | undefined;
};

/** One step: cautions first, then what to do, with the running chance and what was spent so far. */
export function PlanStepRow({ question, options, step, number, entry }: PlanStepRowProps) {
  const strike = { ...options, struck: [...options.struck, { kind: step.kind, id: step.id }] };
  return (
    <li className="plan-step">
      <span className="plan-number">{number}</span>
      <div className="plan-what">
        <h3 className="plan-title">
          <span className="plan-done" aria-hidden="true" />
          <StageMark stage={step.stage} />
          <span>
            <span className="plan-kind">{step.kind === 'check' ? 'Check: ' : 'Fix: '}</span>
            {capital(step.label)}
          </span>
        </h3>
        <Cautions hazards={step.cautions} />
        {step.first ? (
          <p>
            <strong>First:</strong> {step.first}
          </p>
        ) : null}
        <p>{step.howTo}</p>
        <p className="soft small">
          {stageLabel(step.stage)}. {step.why}
        </p>
        <RecordStep question={question} options={options} step={step} entry={entry} />
      </div>
      <div className="plan-figures">
        <p>
          <strong>{formatMinutes(step.minutes)}</strong>
          {step.costCents > 0 ? (
            <>
              , parts <strong>{formatMoney(step.costCents)}</strong>
            </>
          ) : null}
        </p>
        <ChanceBar before={step.chanceBefore} after={step.chanceAfter} />
        <p>
          works by now: <strong>{formatPercent(step.chanceAfter)}</strong>
          <span className="soft"> (before: {formatPercent(step.chanceBefore)})</span>
        </p>
        <p className="soft">
          so far, on average: {formatMinutes(step.expectedMinutesSoFar)}, cost {formatMoney(step.expectedCostCentsSoFar)}
        </p>
        <p className="no-print">
          <AddressLink
            href={questionHref('/plan', question, planOptionPairs(strike))}
            className="press press-small"
            label={`Strike: ${step.label}`}
          >
            Strike this step
          </AddressLink>
        </p>
      </div>
    </li>
  );
}
