'use client';

import { type ReactNode, useActionState } from 'react';
import { type FormState, UNTOUCHED } from '../../../_trpc/form-state';

type DecisionFormProps = {
  action: (before: FormState, data: FormData) => Promise<FormState>;
  hidden: Record<string, string>;
  submit: string;
  main?: boolean;
  children?: ReactNode;
};

/** One decision as a form that works without scripts; what is wrong with it is said above it. */
export function DecisionForm({ action, hidden, submit, main = false, children }: DecisionFormProps) {
  const [state, send, pending] = useActionState(action, UNTOUCHED);
  const faults = [...(state.told === null ? [] : [state.told]), ...Object.values(state.fields)];
  return (
    <form action={send} className="decision-form">
      {faults.length > 0 ? (
        <div className="fault-summary" role="alert">
          <strong>Nothing was changed</strong>
          <ul>
            {faults.map((fault) => (
              <li key={fault}>{fault}</li>
            ))}
          </ul>
        </div>
      ) : null}
      {Object.entries(hidden).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      {children}
      <button type="submit" className={main ? 'press press-main' : 'press'} disabled={pending}>
        {submit}
      </button>
    </form>
  );
}
