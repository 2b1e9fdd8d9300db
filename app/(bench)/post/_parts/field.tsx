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
  const { problems } = useForm();
  const id = fieldId(field);
  const isWrong = problems.some((problem) => problem.field === field);
  const described = [hint ? `${id}-hint` : '', isWrong ? `${id}-fault` : ''].filter((part) => part !== '').join(' ');
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

/** What is wrong with a field, or with what lies below it and has no place of its own. */
export function Fault({ field, below = false }: { field: string; below?: boolean }) {
  const { problems } = useForm();
  const here = problems.filter((problem) => problem.field === field || (below && problem.field.startsWith(`${field}.`)));
  if (here.length === 0) return null;
  return (
    <p className="field-fault" id={`${fieldId(field)}-fault`}>
      {[...new Set(here.map((problem) => problem.reason))].join(' ')}
    </p>
  );
}
