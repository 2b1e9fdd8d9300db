'use client';

import type { ReactNode } from 'react';
import { fieldId, useForm } from './form-context';

type FieldProps = {
  field: string;
  label: string;
  hint?: string;
  /** Given what ties the control to its label, hint and fault. */
  children: (tie: { id: string; 'aria-describedby': string | undefined; 'aria-invalid': boolean }) => ReactNode;
};

/** A control with its label, its hint, and whatever is wrong with it. */
export function Field({ field, label, hint, children }: FieldProps) {
  const { problems, asked } = useForm();
  const isAsked = asked.some((change) => change.field === field);
  const id = fieldId(field);
  const isWrong = problems.some((problem) => problem.field === field);
  const described = [hint ? `${id}-hint` : '', isWrong ? `${id}-fault` : '', isAsked ? `${id}-asked` : '']
    .filter((part) => part !== '')
    .join(' ');
  return (
    <div className="post-field">
      <label htmlFor={id}>{label}</label>
      {hint ? (
        <p className="soft small" id={`${id}-hint`}>
          {hint}
        </p>
      ) : null}
      {children({ id, 'aria-describedby': described || undefined, 'aria-invalid': isWrong })}
      <Fault field={field} />
    </div>
  );
}

/** What was asked for at a field, and what is wrong with it or with what lies below it and has no place of its own. */
export function Fault({ field, below = false }: { field: string; below?: boolean }) {
  const { problems } = useForm();
  const here = problems.filter((problem) => problem.field === field || (below && problem.field.startsWith(`${field}.`)));
  return (
    <>
      <Asked field={field} />
      {here.length === 0 ? null : (
        <p className="field-fault" id={`${fieldId(field)}-fault`}>
          {[...new Set(here.map((problem) => problem.reason))].join(' ')}
        </p>
      )}
    </>
  );
}

/** What a moderator asked to have changed at a field. */
export function Asked({ field }: { field: string }) {
  const { asked } = useForm();
  const here = asked.filter((change) => change.field === field);
  if (here.length === 0) return null;
  return (
    <p className="asked-here" id={`${fieldId(field)}-asked`}>
      <strong>Asked for:</strong> {here.map(({ reason }) => reason).join(' ')}
    </p>
  );
}
