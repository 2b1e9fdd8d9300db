import type { PlanOptions } from '../../../shared/schemas/plan';
import { planOptionPairs } from '../../_address/plan-options';
import { questionHref, type Question } from '../../_address/question';
import { AddressLink } from '../../_components/address-link';
import { formatMoney } from '../../_components/format-figures';

/** Ending costs that are offered where none of the steps pays at the one that was set. */
const LEAST_OFFERED_CENTS = 10_000;

type NoStepPaysProps = { question: Question; options: PlanOptions };

/** Said where the plan has no step: why that is, and what would change it. */
export function NoStepPays({ question, options }: NoStepPaysProps) {
  const doubled = Math.max(LEAST_OFFERED_CENTS, 2 * options.handOverCents);
  return (
    <div className="no-print">
      <p>
        With so many causes still open, stopping at {formatMoney(options.handOverCents)} is cheaper than any step within your
        limits. Name the device, look up a check that tells more, or say what giving the unit up is really worth to you:
      </p>
      <p className="onward">
        {[doubled, 2 * doubled].map((handOverCents) => (
          <AddressLink
            key={handOverCents}
            href={questionHref('/plan', question, planOptionPairs({ ...options, handOverCents }))}
            className="press press-small"
          >
            Plan at {formatMoney(handOverCents)}
          </AddressLink>
        ))}
      </p>
    </div>
  );
}
