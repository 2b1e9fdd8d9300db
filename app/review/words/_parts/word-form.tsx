'use client';

import { useActionState, useEffect, useId, useRef } from 'react';
import { type FormState, UNTOUCHED } from '../../../_trpc/form-state';

export type WordField = {
  name: string;
  label: string;
  kind: 'line' | 'area' | 'choice';
  hint?: string;
  value?: string;
  options?: readonly { value: string; label: string }[];
};

type WordFormProps = {
  action: (before: FormState, data: FormData) => Promise<FormState>;
  fields?: readonly WordField[];
  hidden?: Record<string, string>;
  submit: string;
  /** Tells buttons of the same words apart for who does not see the page. */
  about?: string;
  doneText: string;
};

const NO_FIELDS: readonly WordField[] = [];

/** A form about an entry. Its faults stand at their fields; it works as a plain form where scripts do not run. */
export function WordForm({ action, fields = NO_FIELDS, hidden = {}, submit, about, doneText }: WordFormProps) {
  const [state, send, pending] = useActionState(action, UNTOUCHED);
  const id = useId();
  const told = useRef<HTMLDivElement>(null);
  const loose = Object.entries(state.fields).filter(([name]) => !fields.some((field) => field.name === name));
  const isFaulty = state.told !== null || Object.keys(state.fields).length > 0;

  useEffect(() => {
    if (state !== UNTOUCHED && (isFaulty || state.done)) told.current?.focus();
  }, [state, isFaulty]);

  return (
    <form action={send} className="word-form" noValidate>
      <div ref={told} tabIndex={-1} role={isFaulty ? 'alert' : 'status'}>
        {state.done ? <p>{doneText}</p> : null}
        {isFaulty ? (
          <p className="field-fault">
            <strong>This needs another look.</strong> {[state.told, ...loose.map(([, text]) => text)].filter(Boolean).join(' ')}
          </p>
        ) : null}
      </div>
      {fields.map((field) => (
        <FieldOf key={field.name} field={field} id={`${id}${field.name}`} state={state} />
      ))}
      {Object.entries(hidden).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <button type="submit" className="press" disabled={pending}>
        {submit}
        {about === undefined ? null : <span className="sr-only">: {about}</span>}
      </button>
    </form>
  );
}

function FieldOf({ field, id, state }: { field: WordField; id: string; state: FormState }) {
  const fault = state.fields[field.name];
  const described = [field.hint && `${id}-hint`, fault && `${id}-fault`].filter(Boolean).join(' ');
  const shared = {
    id,
    name: field.name,
    defaultValue: state.typed[field.name] ?? field.value ?? '',
    'aria-invalid': fault !== undefined,
    'aria-describedby': described || undefined,
  };
  return (
    <div className="word-field">
      <label htmlFor={id}>{field.label}</label>
      {field.hint ? (
        <p className="soft small" id={`${id}-hint`}>
          {field.hint}
        </p>
      ) : null}
      {field.kind === 'line' ? <input type="text" {...shared} /> : null}
      {field.kind === 'area' ? <textarea rows={4} {...shared} /> : null}
      {field.kind === 'choice' ? (
        <select {...shared}>
          <option value="">Choose an entry</option>
          {(field.options ?? []).map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      ) : null}
      {fault === undefined ? null : (
        <p className="field-fault" id={`${id}-fault`}>
          <strong>Change this:</strong> {fault}
        </p>
      )}
    </div>
  );
}
