import { TRPCError } from '@trpc/server';
import { unstable_rethrow } from 'next/navigation';
import { ZodError } from 'zod';
import { type FormState, UNTOUCHED } from './form-state';

type Outcome = { status: 'done' } | { status: 'refused'; fields: Partial<Record<string, string>> };

/**
 * Calls a procedure for a form and turns what comes back into the form's next state: field errors at their fields,
 * refusals above the form. A fault is logged by the caller and told in general words.
 *
 * @param typed what the form's fields held and may be shown again: never a password.
 */
export async function formStateOf(call: () => Promise<Outcome>, typed: Record<string, string> = {}): Promise<FormState> {
  try {
    const outcome = await call();
    if (outcome.status !== 'refused') return { ...UNTOUCHED, typed, done: true };
    const fields = Object.entries(outcome.fields).filter((pair): pair is [string, string] => pair[1] !== undefined);
    return { fields: Object.fromEntries(fields), told: null, typed, done: false };
  } catch (error) {
    unstable_rethrow(error);
    if (!(error instanceof TRPCError)) throw error;
    return { ...troubles(error), typed, done: false };
  }
}

function troubles(error: TRPCError): Pick<FormState, 'fields' | 'told'> {
  if (error.code === 'BAD_REQUEST' && error.cause instanceof ZodError) {
    const fields: Record<string, string> = {};
    // The first fault of each field: the others often go away with it.
    for (const { path, message } of error.cause.issues) fields[String(path[0])] ??= message;
    return { fields, told: null };
  }
  const isBug = error.code === 'INTERNAL_SERVER_ERROR';
  return {
    fields: {},
    told: isBug ? 'That did not work, and it is not your doing. It was logged; please try again.' : error.message,
  };
}
