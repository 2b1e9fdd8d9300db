import type { PlanOptions, PlanResult } from '../../../shared/schemas/plan';
import { sameKey } from '../../_address/finding-code';
import type { Question } from '../../_address/question';
import type { VocabularyEntry } from '../../_address/vocabulary-entry';
import { formatMoney, formatPercent } from '../../_components/format-figures';
import { NoStepPays } from './no-step-pays';
import { PlanStepRow } from './plan-step-row';

type PlanStepListProps = { question: Question; options: PlanOptions; plan: PlanResult; entries: VocabularyEntry[] };

/** The steps in order, down to stopping or handing over. */
export function PlanStepList({ question, options, plan, entries }: PlanStepListProps) {
  return (
    <section className="section" aria-labelledby="steps-head">
      <h2 id="steps-head">Steps, in this order</h2>
      <p className="section-sub">
        {plan.steps.length === 0
          ? 'No step within your limits is worth its cost.'
          : 'Stop as soon as it works, and look again after every finding: the plan then reckons with it.'}
      </p>
      {plan.steps.length === 0 ? <NoStepPays question={question} options={options} /> : null}
      <ol className="plan-steps">
        {plan.steps.map((step, index) => (
          <PlanStepRow
            key={`${step.kind}.${step.id}`}
            question={question}
            options={options}
            step={step}
            number={index + 1}
            entry={entries.find((entry) => sameKey(entry, step))}
          />
        ))}
        <li className="plan-step plan-end">
          <span className="plan-number" aria-hidden="true">
            {plan.steps.length + 1}
          </span>
          <div className="plan-what">
            <h3>Stop, or hand it over</h3>
            <p>
              {formatPercent(plan.end.chanceLeft)} of units like this one still do not work by now. Stop here, or hand it over
              with these notes, at {formatMoney(plan.end.costCents)}.
            </p>
          </div>
        </li>
      </ol>
    </section>
  );
}
