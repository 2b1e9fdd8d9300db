import type { CaseStepView, CaseView } from '../../../../shared/schemas/case-view';
import { StageMark } from '../../../_components/stage-mark';
import { FIX_RESULT_WORDS, inSentence, joinWords } from '../../../_components/words';

/** What was seen, then every check and fix in the order in which it happened. */
export function CaseTimeline({ found }: { found: CaseView }) {
  const present = found.symptoms.filter((symptom) => symptom.present);
  const absent = found.symptoms.filter((symptom) => !symptom.present);
  return (
    <section className="section">
      <h2>In the order it happened</h2>
      <ol className="timeline">
        <li>
          <span className="step-number" aria-hidden="true">
            0
          </span>
          <p>
            <strong>Seen at the start:</strong>{' '}
            {present.length > 0 ? joinWords(present.map((s) => inSentence(s.label))) : 'nothing recorded'}.
            {absent.length > 0 ? ` Not there: ${joinWords(absent.map((s) => inSentence(s.label)))}.` : ''}
            {found.symptomsComplete ? ' That was all there was to see.' : ''}
          </p>
        </li>
        {found.steps.map((step, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the same step can come twice, and the order never changes
          <li key={index}>
            <span className="step-number" aria-hidden="true">
              {index + 1}
            </span>
            <Step step={step} />
          </li>
        ))}
      </ol>
    </section>
  );
}

function Step({ step }: { step: CaseStepView }) {
  if (step.kind === 'fix') {
    const fixes = step.fixes.map((fix) =>
      fix.designator ? `${inSentence(fix.label)} (${fix.designator})` : inSentence(fix.label),
    );
    return (
      <p className="step">
        <StageMark stage={step.stage} />
        <span>
          Fix: {joinWords(fixes)}: <strong>{FIX_RESULT_WORDS[step.result]}</strong>
        </span>
      </p>
    );
  }
  return (
    <p className="step">
      <StageMark stage={step.stage} />
      <span>
        Check: {inSentence(step.label)}
        {step.designator ? ` (${step.designator})` : ''}: <strong>{inSentence(step.outcomeLabel)}</strong>
        {step.value === null ? null : (
          <span className="figure">
            {' '}
            · {step.value} {step.unit}
          </span>
        )}
        <span className="soft">{step.asWorking ? ', as on a working unit' : ', not as on a working unit'}</span>
        {step.proved ? <strong> · this proved the cause</strong> : null}
      </span>
    </p>
  );
}
