'use client';

import type { PlanResult, PlanStep } from '../../../../shared/schemas/plan';
import { formatMinutes, formatMoney, formatPercent } from '../../../_components/format-figures';
import { StageMark } from '../../../_components/stage-mark';
import { capital } from '../../../_components/words';
import { FixResult } from './fix-result';
import { StepCautions, useCautions } from './session-cautions';
import { useUnit } from './unit-context';

const SHOWN = 6;

/** The plan from here: checks and fixes in order, each fix to be entered with its result. */
export function BenchPlan({ plan, planned }: { plan: PlanResult | null; planned: boolean }) {
  const steps = plan?.steps.slice(0, SHOWN) ?? [];
  const fullOf = useCautions(steps.map((step) => ({ key: `${step.kind} ${step.id}`, cautions: step.cautions })));
  return (
    <section className="section" aria-labelledby="bench-plan-head" aria-busy={!planned}>
      <h2 id="bench-plan-head">Plan</h2>
      {planned ? null : <p className="soft small">Still looking for a better plan.</p>}
      {plan !== null && steps.length === 0 ? <p>No step pays any more: stop, or hand the unit over.</p> : null}
      <ol className="rows">
        {steps.map((step) => (
          <li className="row" key={`${step.kind} ${step.id}`}>
            <PlanRow step={step} full={fullOf(`${step.kind} ${step.id}`)} />
          </li>
        ))}
      </ol>
      {plan ? (
        <p className="soft small">
          On average {formatMinutes(plan.expectedMinutes)} and a cost of {formatMoney(plan.expectedCostCents)}; works in{' '}
          {formatPercent(plan.chanceResolved)} of units like this one, else stop or hand over.
        </p>
      ) : null}
    </section>
  );
}

function PlanRow({ step, full }: { step: PlanStep; full: ReturnType<ReturnType<typeof useCautions>> }) {
  const { words, add, say, partsOf } = useUnit();
  const fix = step.kind === 'fix' ? words.fixes.get(step.id) : undefined;
  return (
    <details className="check">
      <summary>
        <span className="check-name">
          <span className="plan-kind">{step.kind === 'check' ? 'Check: ' : 'Fix: '}</span>
          {capital(step.label)}
        </span>
        <StageMark stage={step.stage} />
        <span className="check-sub">
          {formatMinutes(step.minutes)} · works by then in {formatPercent(step.chanceAfter)}
        </span>
      </summary>
      <div className="check-body">
        <StepCautions hazards={step.cautions} full={full} />
        {step.first ? (
          <p>
            <strong>First:</strong> {step.first}
          </p>
        ) : null}
        <p>{step.howTo}</p>
        {fix ? (
          <FixResult
            label={fix.label}
            parts={partsOf(fix.role)}
            onDone={(result, designator) => {
              add([{ kind: 'fix', fixes: [{ fix: fix.slug, designator }], result }]);
              say(`${fix.label} is entered.`);
            }}
          />
        ) : null}
      </div>
    </details>
  );
}
