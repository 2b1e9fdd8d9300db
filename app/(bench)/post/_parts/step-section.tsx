'use client';

import type { Suggestion } from '../../../../shared/schemas/case-view';
import type { DraftStep } from '../../../../shared/schemas/submission';
import { EntryBox } from './entry-box';
import { Fault } from './field';
import { fieldId, useForm } from './form-context';
import { newRowKey } from './local-draft';
import { Proposals } from './proposals';
import { ReadingRows } from './reading-rows';
import { StepRow } from './step-row';

function stepFor(entry: Suggestion): DraftStep {
  const key = newRowKey();
  if (entry.kind === 'fix') return { key, kind: 'fix', fixes: [{ fix: entry.id, designator: '' }], result: '' };
  return { key, kind: 'check', check: entry.id, outcome: '', designator: '', reading: '' };
}

/** Checks and fixes in the order in which they happened. */
export function StepSection() {
  const { document, update, announce } = useForm();
  return (
    <section className="section" aria-labelledby="post-steps-head">
      <h2 id="post-steps-head">What you checked and tried, in order</h2>
      <p className="section-sub">What did not help belongs here as much as what did.</p>
      <div id={fieldId('steps')} tabIndex={-1}>
        <Fault field="steps" />
        <ol className="post-steps">
          {document.steps.map((step, index) => (
            <StepRow key={step.key} step={step} index={index} last={index === document.steps.length - 1} />
          ))}
        </ol>
      </div>
      <EntryBox
        id={fieldId('step-box')}
        label="Add a check or a fix"
        hint="Type a few letters; Enter takes the first in the list."
        kinds={['check', 'fix']}
        onChoose={(entry) => {
          update((now) => ({ ...now, steps: [...now.steps, stepFor(entry)] }));
          announce(`${entry.label} is added as step ${document.steps.length + 1}.`);
        }}
      />
      <Proposals kinds={['check', 'fix']} />
      <ReadingRows />
      <datalist id="post-parts">
        <Parts />
      </datalist>
    </section>
  );
}

/** Designators of the chosen device, offered where a part is named. */
function Parts() {
  const { document, words } = useForm();
  const place = words.devices.get(document.device);
  const boards = place ? (place.board ? [place.board] : place.model.boards) : [];
  const names = [...new Set(boards.flatMap((board) => board.parts.map((part) => part.designator)))];
  return names.map((name) => <option key={name} value={name} />);
}
