import type { CaseStepView, CaseView } from '../../../../shared/schemas/case-view';
import { StageMark } from '../../../_components/stage-mark';
import { FIX_RESULT_WORDS, inSentence } from '../../../_components/words';
import { WordLinks } from './word-links';

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
            {present.length > 0 ? <WordLinks words={present.map(symptomLink)} /> : 'nothing recorded'}.
            {absent.length > 0 ? (
              <>
                {' '}
                Not there: <WordLinks words={absent.map(symptomLink)} />.
              </>
            ) : null}
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

const symptomLink = ({ id, label }: CaseView['symptoms'][number]) => ({ id, label, href: `/symptoms/${id}` });

function Step({ step }: { step: CaseStepView }) {
  if (step.kind === 'fix') {
    return (
      <p className="step">
        <StageMark stage={step.stage} />
        <span>
          Fix: <WordLinks words={step.fixes.map((fix) => ({ ...fix, href: `/fixes/${fix.id}` }))} />:{' '}
          <strong>{FIX_RESULT_WORDS[step.result]}</strong>
        </span>
      </p>
    );
  }
  return (
    <p className="step">
      <StageMark stage={step.stage} />
      <span>
        Check:{' '}
        <WordLinks words={[{ id: step.id, label: step.label, designator: step.designator, href: `/parts/${step.role}#${step.id}` }]} />
        : <strong>{inSentence(step.outcomeLabel)}</strong>
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
