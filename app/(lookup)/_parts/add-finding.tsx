import { withAside } from '../../_address/edit-question';
import { questionHref, type Question } from '../../_address/question';
import { FindingForm } from './finding-form';
import { HiddenQuestion } from './hidden-question';

type AddFindingProps = {
  question: Question;
  label: string;
  /** The stretch of the words that the chosen finding stands for; it is then set aside. */
  standsFor?: string;
};

/**
 * Adds a finding from the vocabulary with type-ahead. Without scripts it is a plain form whose words join the
 * question's, beside a link to all the words that the casebook knows.
 */
export function AddFinding({ question, label, standsFor }: AddFindingProps) {
  const base = standsFor === undefined ? question : withAside(question, standsFor);
  return (
    <FindingForm question={base} label={label}>
      <HiddenQuestion question={base} leaveOut={['why']} />
      <p className="small">
        <a href={questionHref('/words', base)} className="row-link">
          All the words that can be used
        </a>
      </p>
    </FindingForm>
  );
}
