import type { PlanOptions, PlanResult } from '../../../shared/schemas/plan';
import { planOptionPairs, struckToCode } from '../../_address/plan-options';
import { questionHref, type Question } from '../../_address/question';
import { AddressLink } from '../../_components/address-link';

type StruckStepsProps = { question: Question; options: PlanOptions; struck: PlanResult['struck'] };

/** The steps that the user struck, each with a way to put it back. */
export function StruckSteps({ question, options, struck }: StruckStepsProps) {
  if (struck.length === 0) return null;
  return (
    <ul className="read no-print" aria-label="Steps struck out">
      {struck.map((step) => {
        const rest = options.struck.filter((other) => struckToCode(other) !== struckToCode(step));
        return (
          <li className="tag tag-aside" key={struckToCode(step)}>
            <span className="tag-words">
              struck: <s>{step.label}</s>
            </span>
            <AddressLink
              href={questionHref('/plan', question, planOptionPairs({ ...options, struck: rest }))}
              label={`Put back ${step.label}`}
            >
              Put back
            </AddressLink>
          </li>
        );
      })}
    </ul>
  );
}
