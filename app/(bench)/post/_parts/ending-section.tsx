'use client';

import { CASE_OUTCOMES, PROOFS } from '../../../../shared/schemas/case';
import { type DraftDocument, SUBMISSION_LIMITS } from '../../../../shared/schemas/submission';
import { CASE_OUTCOME_WORDS, capital, PROOF_WORDS } from '../../../_components/words';
import { AfterChecks } from './after-checks';
import { CauseRows } from './cause-rows';
import { Field } from './field';
import { useForm } from './form-context';

/** How it ended: cause, proof, outcome, and what was done to make sure. */
export function EndingSection() {
  const { document, update, words } = useForm();
  const checks = document.steps.filter((step) => step.kind === 'check');
  return (
    <section className="section" aria-labelledby="post-ending-head">
      <h2 id="post-ending-head">How it ended</h2>
      <CauseRows />
      <div className="post-row-fields">
        <Field field="proof" label="The cause was proved">
          {(tie) => (
            <select
              {...tie}
              value={document.proof}
              onChange={(e) => update((now) => ({ ...now, proof: e.target.value as DraftDocument['proof'] }))}
            >
              <option value="">Choose, where a cause is named</option>
              {PROOFS.map((proof) => (
                <option key={proof} value={proof}>
                  {capital(PROOF_WORDS[proof])}
                </option>
              ))}
            </select>
          )}
        </Field>
        <Field field="provedBy" label="Check that proved it, if one did">
          {(tie) => (
            <select {...tie} value={document.provedBy} onChange={(e) => update((now) => ({ ...now, provedBy: e.target.value }))}>
              <option value="">None of them</option>
              {checks.map((step) => (
                <option key={step.key} value={step.key}>
                  {document.steps.indexOf(step) + 1}. {words.checks.get(step.check)?.label ?? step.check}
                </option>
              ))}
            </select>
          )}
        </Field>
        <Field field="outcome" label="Outcome">
          {(tie) => (
            <select
              {...tie}
              value={document.outcome}
              onChange={(e) => update((now) => ({ ...now, outcome: e.target.value as DraftDocument['outcome'] }))}
            >
              <option value="">Choose</option>
              {CASE_OUTCOMES.map((outcome) => (
                <option key={outcome} value={outcome}>
                  {capital(CASE_OUTCOME_WORDS[outcome])}
                </option>
              ))}
            </select>
          )}
        </Field>
        <Field field="soakMinutes" label="Soak time afterwards, in minutes">
          {(tie) => (
            <input
              {...tie}
              type="text"
              className="figure"
              inputMode="numeric"
              autoComplete="off"
              maxLength={SUBMISSION_LIMITS.short}
              value={document.soakMinutes}
              onChange={(e) => update((now) => ({ ...now, soakMinutes: e.target.value }))}
            />
          )}
        </Field>
      </div>
      <AfterChecks />
    </section>
  );
}
