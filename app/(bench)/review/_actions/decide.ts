'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import type { DecisionOutcome } from '../../../../shared/schemas/review';
import type { FormState } from '../../../_trpc/form-state';
import { formStateOf } from '../../../_trpc/form-state-of';
import { serverCaller } from '../../../_trpc/server';
import { readFilter, reviewHref } from '../_parts/queue-address';

const textOf = (data: FormData, name: string): string => {
  const value = data.get(name);
  return typeof value === 'string' ? value : '';
};
const caseOf = (data: FormData) => ({ id: textOf(data, 'id'), seen: textOf(data, 'seen') });
const typedIn = (data: FormData): Record<string, string> =>
  Object.fromEntries([...data].flatMap(([name, value]) => (typeof value === 'string' && !name.startsWith('$') ? [[name, value]] : [])));

/** Makes a decision; what is wrong with it comes back to its form. */
async function decide(data: FormData, call: () => Promise<DecisionOutcome>): Promise<FormState> {
  return formStateOf(async () => {
    const outcome = await call();
    if (outcome.status === 'done' || outcome.status === 'refused') return outcome;
    const found =
      outcome.status === 'problems'
        ? outcome.problems.map(({ field, reason }) => `${field}: ${reason}`)
        : outcome.details.map(({ text }) => `“${text}” may say who somebody is.`);
    return { status: 'refused' as const, fields: { case: `It cannot be published as it stands. ${found.join(' ')}` } };
  }, typedIn(data));
}

/** On to the next case under the filter that the moderator works with, or back to the queue. */
async function goOn(data: FormData, what: string): Promise<never> {
  const filter = readFilter(Object.fromEntries(new URLSearchParams(textOf(data, 'query'))));
  const next = await serverCaller().review.next({ filter });
  revalidatePath('/', 'layout');
  return redirect(reviewHref(next === null ? '/review' : `/review/${next}`, filter, [['done', `${what}.${textOf(data, 'id')}`]]));
}

function stay(data: FormData, what: string): never {
  revalidatePath('/', 'layout');
  return redirect(`/review/${textOf(data, 'id')}?done=${what}`);
}

export async function accept(_: FormState, data: FormData): Promise<FormState> {
  const state = await decide(data, () => serverCaller().review.accept(caseOf(data)));
  return state.done ? goOn(data, 'accepted') : state;
}

export async function decline(_: FormState, data: FormData): Promise<FormState> {
  const input = { ...caseOf(data), reason: textOf(data, 'reason') as 'other', text: textOf(data, 'text') };
  const state = await decide(data, () => serverCaller().review.decline(input));
  return state.done ? goOn(data, 'declined') : state;
}

export async function askForChanges(_: FormState, data: FormData): Promise<FormState> {
  const asked = [0, 1, 2].flatMap((row) => {
    const [field, reason] = [textOf(data, `field.${row}`), textOf(data, `reason.${row}`)];
    return field === '' && reason.trim() === '' ? [] : [{ field, reason }];
  });
  const state = await decide(data, () => serverCaller().review.askForChanges({ ...caseOf(data), asked }));
  return state.done ? goOn(data, 'asked') : state;
}

export async function merge(_: FormState, data: FormData): Promise<FormState> {
  const state = await decide(data, () => serverCaller().review.merge({ ...caseOf(data), into: textOf(data, 'into').trim() }));
  return state.done ? goOn(data, 'merged') : state;
}

export async function retract(_: FormState, data: FormData): Promise<FormState> {
  const state = await decide(data, () => serverCaller().review.retract({ ...caseOf(data), text: textOf(data, 'text') }));
  return state.done ? stay(data, 'retracted') : state;
}

export async function restore(_: FormState, data: FormData): Promise<FormState> {
  const state = await decide(data, () => serverCaller().review.restore(caseOf(data)));
  return state.done ? stay(data, 'restored') : state;
}

export async function leaveAsIs(_: FormState, data: FormData): Promise<FormState> {
  const input = { reportId: textOf(data, 'reportId'), text: textOf(data, 'text') };
  const state = await decide(data, () => serverCaller().review.leaveAsIs(input));
  if (!state.done) return state;
  revalidatePath('/', 'layout');
  return redirect('/review/reports?done=left');
}

/** Takes a case to look at, where scripts do not do so by themselves. */
export async function take(_: FormState, data: FormData): Promise<FormState> {
  const state = await formStateOf(async () => {
    await serverCaller().review.claim({ id: textOf(data, 'id') });
    return { status: 'done' };
  });
  if (state.done) revalidatePath('/', 'layout');
  return state;
}
