import type { PlanResult } from '../../../shared/schemas/plan';
import { formatMinutes, formatMoney, formatPercent } from '../../_components/format-figures';

/** What the whole plan comes to. */
export function PlanSums({ plan }: { plan: PlanResult }) {
  return (
    <section className="section" aria-labelledby="sums-head">
      <h2 id="sums-head">What it comes to</h2>
      <dl className="plan-sums">
        <div>
          <dt>Chance that it works in the end</dt>
          <dd>{formatPercent(plan.chanceResolved)}</dd>
        </div>
        <div>
          <dt>Expected time</dt>
          <dd>{formatMinutes(plan.expectedMinutes)}</dd>
        </div>
        <div>
          <dt>Expected cost, time and ending included</dt>
          <dd>{formatMoney(plan.expectedCostCents)}</dd>
        </div>
      </dl>
      <p className="soft small">
        An hour counts {formatMoney(plan.options.hourValueCents)}, and stopping or handing over{' '}
        {formatMoney(plan.options.handOverCents)}, in your own money. Expected means averaged over units like this one. Each unit
        is taken to have one fault; cases are volunteered, not sampled.
      </p>
    </section>
  );
}
