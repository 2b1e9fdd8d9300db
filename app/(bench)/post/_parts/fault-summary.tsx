'use client';

import { useEffect, useRef } from 'react';
import type { FieldProblem } from '../../../../shared/schemas/submission';
import { fieldId } from './form-context';
import { placeOfField } from '../../../../shared/domain/submission/place-of-field';

type FaultSummaryProps = {
  problems: readonly FieldProblem[];
  /** What went wrong with none of the fields. */
  told: string | null;
  /** Counts the tries to send: each one brings the focus here. */
  tries: number;
};

/** Everything that is wrong, linked to where it is mended. */
export function FaultSummary({ problems, told, tries }: FaultSummaryProps) {
  const box = useRef<HTMLDivElement>(null);
  const isFaulty = problems.length > 0 || told !== null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: only a try to send moves the focus, not each key mended
  useEffect(() => {
    if (tries > 0 && isFaulty) box.current?.focus();
  }, [tries]);
  if (!isFaulty) return null;
  return (
    <div className="fault-summary" role="alert" tabIndex={-1} ref={box}>
      <strong>Nothing was sent yet{problems.length > 0 ? ': this needs another look' : ''}</strong>
      {told === null ? null : <p>{told}</p>}
      <ul>
        {problems.map(({ field, reason }) => (
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
    </div>
  );
}

/** Puts the focus into a field, or into the nearest part of the form that it belongs to. */
export function focusField(field: string): void {
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
