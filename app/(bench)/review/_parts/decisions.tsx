import Link from 'next/link';
import type { ReactNode } from 'react';
import type { CaseEvent } from '../../../../shared/domain/submission/next-status';
import type { CaseView } from '../../../../shared/schemas/case-view';
import { DECLINE_REASONS, DECLINE_WORDS, REVIEW_LIMITS } from '../../../../shared/schemas/review';
import { accept, askForChanges, decline, merge, restore, retract } from '../_actions/decide';
import { DecisionForm } from './decision-form';

type DecisionsProps = { view: CaseView; seen: string; may: CaseEvent[]; query: string };

/** Everything that this moderator may do with the case now; nothing where that is nothing. */
export function Decisions({ view, seen, may, query }: DecisionsProps) {
  if (may.length === 0) return null;
  const hidden = { id: view.id, seen, query };
  const waits = may.includes('request-changes');
  return (
    <section className="section" aria-labelledby="decide-head">
      <h2 id="decide-head">Decide</h2>
      {may.includes('accept') ? <DecisionForm action={accept} hidden={hidden} submit="Accept and publish" main /> : null}
      {may.includes('accept') || may.includes('correct') ? (
        <p className="onward">
          <Link href={`/review/${view.id}/edit${query === '' ? '' : `?${query}`}`} className="press" prefetch={false}>
            {may.includes('accept') ? 'Accept with edits' : 'Correct it'}
          </Link>
        </p>
      ) : null}
      {waits ? (
        <Decision name="Ask for changes">
          <DecisionForm action={askForChanges} hidden={hidden} submit="Ask for these changes">
            {[0, 1, 2].map((row) => (
              <AskedRow key={row} row={row} view={view} />
            ))}
          </DecisionForm>
        </Decision>
      ) : null}
      {may.includes('decline') ? (
        <Decision name="Decline">
          <DecisionForm action={decline} hidden={hidden} submit="Decline it">
            <div className="post-field">
              <label htmlFor="decline-reason">Why</label>
              <select id="decline-reason" name="reason" defaultValue="">
                <option value="">Choose</option>
                {DECLINE_REASONS.map((reason) => (
                  <option key={reason} value={reason}>
                    {DECLINE_WORDS[reason]}
                  </option>
                ))}
              </select>
            </div>
            <Words id="decline-text" label="In your words, for whoever posted it" />
          </DecisionForm>
        </Decision>
      ) : null}
      {may.includes('merge') ? (
        <Decision name="Merge into a published case">
          <DecisionForm action={merge} hidden={hidden} submit="Take it as a second report">
            <div className="post-field">
              <label htmlFor="merge-into">Id of the published case</label>
              <input id="merge-into" name="into" type="text" className="figure" autoComplete="off" />
            </div>
          </DecisionForm>
        </Decision>
      ) : null}
      {may.includes('retract') ? (
        <Decision name="Take it back">
          <DecisionForm action={retract} hidden={hidden} submit="Take it out of the casebook">
            <p>It leaves the figures and the search at once. It can be restored.</p>
            <Words id="retract-text" label="Why, for whoever posted it" />
          </DecisionForm>
        </Decision>
      ) : null}
      {may.includes('restore') ? (
        <DecisionForm action={restore} hidden={hidden} submit={view.status === 'retracted' ? 'Publish it again' : 'Put it back into the queue'} />
      ) : null}
    </section>
  );
}

function Decision({ name, children }: { name: string; children: ReactNode }) {
  return (
    <details className="decision" name="decision">
      <summary>{name}</summary>
      {children}
    </details>
  );
}

function Words({ id, label }: { id: string; label: string }) {
  return (
    <div className="post-field">
      <label htmlFor={id}>{label}</label>
      <textarea id={id} name="text" rows={2} maxLength={REVIEW_LIMITS.text} />
    </div>
  );
}

function AskedRow({ row, view }: { row: number; view: CaseView }) {
  return (
    <div className="post-row-fields">
      <div className="post-field">
        <label htmlFor={`asked-${row}`}>{row === 0 ? 'Where' : 'Also at'}</label>
        <select id={`asked-${row}`} name={`field.${row}`} defaultValue="">
          <option value="">{row === 0 ? 'Choose' : 'Nowhere else'}</option>
          {fieldsOf(view).map(({ field, label }) => (
            <option key={field} value={field}>
              {label}
            </option>
          ))}
        </select>
      </div>
      <div className="post-field">
        <label htmlFor={`asked-why-${row}`}>What should change there</label>
        <textarea id={`asked-why-${row}`} name={`reason.${row}`} rows={2} maxLength={REVIEW_LIMITS.text} />
      </div>
    </div>
  );
}

function fieldsOf({ steps }: CaseView): { field: string; label: string }[] {
  return [
    { field: 'device', label: 'Device' },
    { field: 'month', label: 'Month' },
    { field: 'symptoms', label: 'Symptoms' },
    ...steps.map((step, i) => ({
      field: `steps.${i}`,
      label: `Step ${i + 1}: ${step.kind === 'check' ? step.label : step.fixes.map((fix) => fix.label).join(', ')}`,
    })),
    { field: 'steps', label: 'Checks and fixes: one is missing' },
    { field: 'readings', label: 'Readings at pins' },
    { field: 'causes', label: 'Cause' },
    { field: 'proof', label: 'Proof' },
    { field: 'outcome', label: 'Outcome' },
    { field: 'afterRepairChecks', label: 'Checks after the repair' },
    { field: 'soakMinutes', label: 'Soak time' },
    { field: 'narrative', label: 'The words' },
    { field: 'photos', label: 'Photos' },
    { field: 'proposals', label: 'Proposed words' },
  ];
}
