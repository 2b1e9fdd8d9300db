'use client';

import { RemoveIcon } from '../../../_components/icons';
import { EntryBox } from './entry-box';
import { Fault } from './field';
import { fieldId, useForm } from './form-context';

/** Checks done, and passed, after the repair. */
export function AfterChecks() {
  const { document, update, words, announce } = useForm();
  const label = (slug: string) => words.checks.get(slug)?.label ?? slug;
  return (
    <div id={fieldId('afterRepairChecks')} tabIndex={-1}>
      <EntryBox
        id={fieldId('after-box')}
        label="Checks that it passed after the repair"
        kinds={['check']}
        onChoose={(entry) => {
          update((now) =>
            now.afterRepairChecks.includes(entry.id) ? now : { ...now, afterRepairChecks: [...now.afterRepairChecks, entry.id] },
          );
          announce(`${entry.label} is added as passed after the repair.`);
        }}
      />
      <ul className="read" aria-label="Checks passed after the repair">
        {document.afterRepairChecks.map((check) => (
          <li key={check} className="tag">
            <span className="tag-words">{label(check)}</span>
            <button
              type="button"
              className="tag-press"
              aria-label={`Take out ${label(check)}`}
              onClick={() => update((now) => ({ ...now, afterRepairChecks: now.afterRepairChecks.filter((c) => c !== check) }))}
            >
              <RemoveIcon />
            </button>
          </li>
        ))}
      </ul>
      <Fault field="afterRepairChecks" below />
    </div>
  );
}
