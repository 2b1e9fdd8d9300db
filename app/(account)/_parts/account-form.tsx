'use client';

import { useActionState, useEffect, useId, useRef, type ReactNode } from 'react';
import { type FormState, UNTOUCHED } from '../../_trpc/form-state';

export type Field = {
  name: string;
  label: string;
  type: 'text' | 'password' | 'number' | 'choice';
  autoComplete: string;
  hint?: string;
  /** What can be chosen, for a choice. */
  choices?: { value: string; label: string }[];
};

type AccountFormProps = {
  action: (before: FormState, data: FormData) => Promise<FormState>;
  fields: Field[];
  submit: string;
  /** Fields that are sent along unseen. */
  hidden?: Record<string, string>;
  /** Said when it was done and the page stays. */
  doneText?: string;
  /** Shown in place of the form when it was done. */
  whenDone?: (state: FormState) => ReactNode;
  /** Whether its button is one of several beside each other. */
  isQuiet?: boolean;
  children?: ReactNode;
};

/** A form whose errors stand at their field and in a summary. It works as a plain form where scripts do not run. */
export function AccountForm({ action, fields, submit, hidden = {}, doneText, whenDone, isQuiet = false, children }: AccountFormProps) {
  const [state, send, pending] = useActionState(action, UNTOUCHED);
  const id = useId();
  const summary = useRef<HTMLDivElement>(null);
  const faults = fields.filter((field) => state.fields[field.name] !== undefined);
  const loose = Object.entries(state.fields).filter(([name]) => !fields.some((field) => field.name === name));
  const isFaulty = faults.length > 0 || loose.length > 0 || state.told !== null;

  useEffect(() => {
    if (state !== UNTOUCHED && isFaulty) summary.current?.focus();
  }, [state, isFaulty]);

  if (state.done && whenDone) return whenDone(state);
  return (
    <form action={send} className="account-form" noValidate>
      {isFaulty ? (
        <div className="fault-summary" role="alert" tabIndex={-1} ref={summary}>
          <strong>This needs another look</strong>
          <ul>
            {state.told === null ? null : <li>{state.told}</li>}
            {loose.map(([name, text]) => (
              <li key={name}>{text}</li>
            ))}
            {faults.map(({ name, label }) => (
              <li key={name}>
                <a href={`#${id}${name}`}>
                  {label}: {state.fields[name]}
                </a>
              </li>
            ))}
          </ul>
        </div>
      ) : null}
      {state.done && doneText ? <p role="status">{doneText}</p> : null}
      {fields.map((field) => (
        <FormField key={field.name} field={field} id={`${id}${field.name}`} state={state} />
      ))}
      {Object.entries(hidden).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      {children}
      <button type="submit" className={isQuiet ? 'press press-small' : 'press press-main'} disabled={pending}>
        {submit}
      </button>
    </form>
  );
}

function FormField({ field, id, state }: { field: Field; id: string; state: FormState }) {
  const fault = state.fields[field.name];
  if (field.type === 'choice') return <ChoiceField field={field} id={id} state={state} />;
  const described = [field.hint && `${id}-hint`, fault && `${id}-fault`].filter(Boolean).join(' ');
  return (
    <div className="account-field">
      <label htmlFor={id}>{field.label}</label>
      {field.hint ? (
        <p className="soft small" id={`${id}-hint`}>
          {field.hint}
        </p>
      ) : null}
      <input
        id={id}
        name={field.name}
        type={field.type}
        inputMode={field.type === 'number' ? 'numeric' : undefined}
        autoComplete={field.autoComplete}
        autoCapitalize="none"
        spellCheck={false}
        required
        defaultValue={field.type === 'password' ? undefined : state.typed[field.name]}
        aria-invalid={fault !== undefined}
        aria-describedby={described || undefined}
      />
      {fault === undefined ? null : (
        <p className="field-fault" id={`${id}-fault`}>
          <strong>Change this:</strong> {fault}
        </p>
      )}
    </div>
  );
}

function ChoiceField({ field, id, state }: { field: Field; id: string; state: FormState }) {
  const fault = state.fields[field.name];
  return (
    <fieldset className="account-choice" aria-describedby={fault === undefined ? undefined : `${id}-fault`}>
      <legend>{field.label}</legend>
      {field.choices?.map(({ value, label }, i) => (
        <label key={value} className="tick">
          <input
            id={i === 0 ? id : undefined}
            type="radio"
            name={field.name}
            value={value}
            required
            defaultChecked={state.typed[field.name] === value}
          />
          <span>{label}</span>
        </label>
      ))}
      {fault === undefined ? null : (
        <p className="field-fault" id={`${id}-fault`}>
          <strong>Change this:</strong> {fault}
        </p>
      )}
    </fieldset>
  );
}
