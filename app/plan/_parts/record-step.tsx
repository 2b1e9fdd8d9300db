import { type Finding, findingSchema } from '../../../shared/schemas/finding';
import type { PlanOptions, PlanStep } from '../../../shared/schemas/plan';
import { withFinding } from '../../_address/edit-question';
import { planOptionPairs } from '../../_address/plan-options';
import { questionHref, type Question } from '../../_address/question';
import type { VocabularyEntry } from '../../_address/vocabulary-entry';
import { AddressLink } from '../../_components/address-link';
import { inSentence } from '../../_components/words';

type RecordStepProps = { question: Question; options: PlanOptions; step: PlanStep; entry: VocabularyEntry | undefined };

/** What came of a step, one press each: the finding joins the question, and the plan goes on from there. */
export function RecordStep({ question, options, step, entry }: RecordStepProps) {
  const outcomes = (entry?.values ?? []).flatMap(({ value, label }) => {
    const parsed = findingSchema.safeParse({ kind: step.kind, id: step.id, value });
    return parsed.success && parsed.data.value !== 'cured' ? [{ finding: parsed.data, label }] : [];
  });
  if (outcomes.length === 0) return null;
  const hrefAfter = (finding: Finding) => questionHref('/plan', withFinding(question, finding), planOptionPairs(options));
  return (
    <details className="no-print">
      <summary className="row-link">
        <span className="opens">{step.kind === 'check' ? 'I did this, and found …' : 'I tried this, and …'}</span>
      </summary>
      <p className="word-values">
        {outcomes.map(({ finding, label }) => (
          <AddressLink key={finding.value} href={hrefAfter(finding)} className="press press-small">
            <span className="sr-only">{step.label}: </span>
            {inSentence(label)}
          </AddressLink>
        ))}
      </p>
    </details>
  );
}
