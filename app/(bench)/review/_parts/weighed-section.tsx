import type { MovedQuestion, Weighed } from '../../../../shared/domain/review/weigh-case';
import { formatBits, formatPercentFine } from '../../../_components/format-figures';
import { PairedBars } from '../../../_components/paired-bars';
import { inSentence } from '../../../_components/words';

/** What the case would do to the figures, and how far it is from what they expect. */
export function WeighedSection({ weighed, published }: { weighed: Weighed; published: boolean }) {
  return (
    <>
      <section className="section" aria-labelledby="surprise-head">
        <h2 id="surprise-head">How surprising it is</h2>
        {weighed.surprise === null ? <p>It names no cause, so there is nothing to compare it with.</p> : <Surprise found={weighed.surprise} />}
      </section>
      <section className="section" aria-labelledby="influence-head">
        <h2 id="influence-head">What it would move</h2>
        <p className="section-sub">
          {published ? 'If it counted once more, ' : 'Once accepted, '}with the settings of the statistics as they are: now in outline, then
          filled.
        </p>
        {weighed.questions.length === 0 ? <p>No answer would move by a tenth of a percentage point.</p> : null}
        {weighed.questions.map((question) => (
          <Question key={`${question.kind} ${question.symptom} ${question.device}`} question={question} />
        ))}
      </section>
    </>
  );
}

function Surprise({ found: { bits, probability, findings } }: { found: NonNullable<Weighed['surprise']> }) {
  const times = (2 ** Math.abs(bits)).toPrecision(2);
  return (
    <>
      <p>
        Without it, the casebook would have given its cause <strong>{formatPercentFine(probability)}</strong> before the proof.{' '}
        {bits > 0
          ? `What was found is about ${Number(times)} times as usual with other causes as with this one (${formatBits(bits)} against it).`
          : `What was found is about ${Number(times)} times as usual with this cause as with others (${formatBits(-bits)} for it).`}
      </p>
      {findings.length > 0 ? (
        <>
          <p>Most unusual with this cause:</p>
          <ul className="review-list">
            {findings.map(({ label, value, bits: own, usualBits }) => (
              <li key={label}>
                {inSentence(label)}, {inSentence(value)}: {formatPercentFine(2 ** -own)} of such cases, {formatPercentFine(2 ** -usualBits)} of all
              </li>
            ))}
          </ul>
        </>
      ) : null}
    </>
  );
}

function Question({ question: { kind, symptom, device, moved } }: { question: MovedQuestion }) {
  const what = {
    'all-symptoms': 'Its symptoms',
    'one-symptom': `“${symptom}” alone`,
    'before-proof': 'All that was known before the proof',
  }[kind];
  const full = Math.max(...moved.flatMap(({ before, after }) => [before, after]));
  return (
    <>
      <h3>
        {what}, {device ?? 'any device'}
      </h3>
      <ul className="moved">
        {moved.map(({ cause, label, before, after }) => (
          <li key={cause ?? 'unlisted'}>
            <span>{inSentence(label)}</span>
            <PairedBars before={before} after={after} full={full} />
            <span className="figure">
              {formatPercentFine(before)} → {formatPercentFine(after)}
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}
