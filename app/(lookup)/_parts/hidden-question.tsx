import { questionPairs, type Question } from '../../_address/question';

type HiddenQuestionProps = { question: Question; leaveOut?: readonly string[] };

/** The question as hidden fields, so that a form sent without scripts keeps it whole. */
export function HiddenQuestion({ question, leaveOut = [] }: HiddenQuestionProps) {
  return questionPairs(question)
    .filter(([name]) => !leaveOut.includes(name))
    .map(([name, value]) => <input key={`${name}=${value}`} type="hidden" name={name} value={value} />);
}
