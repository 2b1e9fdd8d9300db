import type { CaseView } from '../../../../shared/schemas/case-view';
import { formatMinutes } from '../../../_components/format-figures';
import { CASE_OUTCOME_WORDS, capital, inSentence, joinWords, PROOF_WORDS } from '../../../_components/words';

/** What it was, how that was proved, how it ended, and what was done to see that it holds. */
export function CaseEnding({ found }: { found: CaseView }) {
  const causes = found.causes.map((cause) =>
    cause.designators.length > 0 ? `${inSentence(cause.label)} (${cause.designators.join(', ')})` : inSentence(cause.label),
  );
  return (
    <section className="section">
      <h2>What it was</h2>
      <dl className="facts">
        <dt>Cause</dt>
        <dd>
          <strong>{causes.length > 0 ? capital(joinWords(causes)) : 'Not found'}</strong>
        </dd>
        {found.proof === null ? null : (
          <>
            <dt>Proved</dt>
            <dd>{PROOF_WORDS[found.proof]}</dd>
          </>
        )}
        <dt>Outcome</dt>
        <dd>{CASE_OUTCOME_WORDS[found.outcome]}</dd>
        <dt>After the repair</dt>
        <dd>{afterWords(found)}</dd>
      </dl>
    </section>
  );
}

function afterWords(found: CaseView): string {
  const checks =
    found.afterRepairChecks.length > 0
      ? `checked again: ${joinWords(found.afterRepairChecks.map((check) => inSentence(check.label)))}`
      : '';
  const soak = found.soakMinutes === null ? '' : `left running for ${formatMinutes(found.soakMinutes)}`;
  return capital([checks, soak].filter((part) => part !== '').join('; ')) || 'Not recorded';
}
