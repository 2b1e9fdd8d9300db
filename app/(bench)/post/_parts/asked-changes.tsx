'use client';

import { placeOfField } from '../../../../shared/domain/submission/place-of-field';
import { focusField } from './fault-summary';
import { fieldId, useForm } from './form-context';

/** Everything that a moderator asked to have changed, linked to where it is changed. */
export function AskedChanges() {
  const { asked } = useForm();
  if (asked.length === 0) return null;
  return (
    <section className="asked-changes" aria-labelledby="asked-head">
      <h2 id="asked-head">Changes asked for</h2>
      <ul>
        {asked.map(({ field, reason }) => (
          <li key={`${field} ${reason}`}>
            <a
              href={`#${fieldId(field)}`}
              onClick={(event) => {
                event.preventDefault();
                focusField(field);
              }}
            >
              {placeOfField(field)}: {reason}
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}
