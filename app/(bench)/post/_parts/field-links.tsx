'use client';

import { placeOfField } from '../../../../shared/domain/submission/place-of-field';
import { fieldId } from './form-context';

/** What there is to say of some fields, each linked to its field. */
export function FieldLinks({ places }: { places: readonly { field: string; reason: string }[] }) {
  return (
    <ul>
      {places.map(({ field, reason }) => (
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
  );
}

/** Puts the focus into a field, or into the nearest part of the form that it belongs to. */
function focusField(field: string): void {
  for (let path = field; path !== ''; path = path.slice(0, Math.max(path.lastIndexOf('.'), 0))) {
    const node = window.document.getElementById(fieldId(path));
    if (node === null) continue;
    const control = node.matches('input, select, textarea')
      ? node
      : (node.querySelector<HTMLElement>('input, select, textarea') ?? node);
    control.focus();
    control.scrollIntoView({ block: 'center' });
    return;
  }
}
