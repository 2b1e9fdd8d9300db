'use client';

import { SUBMISSION_LIMITS } from '../../../../shared/schemas/submission';
import { RemoveIcon } from '../../../_components/icons';
import { EntryBox } from './entry-box';
import { Fault, Field } from './field';
import { fieldId, useForm } from './form-context';
import { Proposals } from './proposals';

/** The causes found, each with the parts it was at; none where it was not found. */
export function CauseRows() {
  const { document, update, words, announce } = useForm();
  const label = (slug: string) => words.causes.get(slug)?.label ?? slug;
  return (
    <div id={fieldId('causes')} tabIndex={-1}>
      {document.causes.map(({ cause, designators }, i) => (
        <fieldset key={cause} className="post-row" id={fieldId(`causes.${i}`)}>
          <legend>Cause: {label(cause)}</legend>
          <Field field={`causes.${i}.designators`} label="Parts it was at, as on the board">
            {(tie) => (
              <input
                {...tie}
                type="text"
                className="figure"
                autoCapitalize="characters"
                autoComplete="off"
                maxLength={SUBMISSION_LIMITS.designators}
                placeholder="U14 U15"
                value={designators}
                onChange={(e) =>
                  update((now) => ({
                    ...now,
                    causes: now.causes.map((c) => (c.cause === cause ? { ...c, designators: e.target.value } : c)),
                  }))
                }
              />
            )}
          </Field>
          <Fault field={`causes.${i}.cause`} />
          <button
            type="button"
            className="press press-small"
            onClick={() => update((now) => ({ ...now, causes: now.causes.filter((c) => c.cause !== cause) }))}
          >
            <RemoveIcon /> Remove<span className="sr-only">: {label(cause)}</span>
          </button>
        </fieldset>
      ))}
      <Fault field="causes" />
      <EntryBox
        id={fieldId('cause-box')}
        label={document.causes.length === 0 ? 'Cause, if it was found' : 'Another cause'}
        kinds={['cause']}
        onChoose={(entry) => {
          update((now) =>
            now.causes.some((c) => c.cause === entry.id)
              ? now
              : { ...now, causes: [...now.causes, { cause: entry.id, designators: '' }] },
          );
          announce(`${entry.label} is added as a cause.`);
        }}
      />
      <Proposals kinds={['cause']} />
    </div>
  );
}
