'use server';

import { revalidatePath } from 'next/cache';
import { headers } from 'next/headers';
import type { Role } from '../../../shared/domain/can/role';
import type { FormState } from '../../_trpc/form-state';
import { formStateOf } from '../../_trpc/form-state-of';
import { serverCaller } from '../../_trpc/server';
import { textOf } from './text-of';

/** Does one thing to one account; the page then shows it as it is. */
async function change(act: () => Promise<unknown>): Promise<FormState> {
  const state = await formStateOf(async () => {
    await act();
    return { status: 'done' };
  });
  if (state.done) revalidatePath('/keeper');
  return state;
}

export async function setRole(_: FormState, data: FormData): Promise<FormState> {
  return change(() =>
    serverCaller().account.setRole({ accountId: textOf(data, 'accountId'), role: textOf(data, 'role') as Role }),
  );
}

export async function endSessions(_: FormState, data: FormData): Promise<FormState> {
  return change(() => serverCaller().account.endSessions({ accountId: textOf(data, 'accountId') }));
}

/** Makes a link for a new password; it comes back in `typed.link`, and is shown this once. */
export async function makeResetLink(_: FormState, data: FormData): Promise<FormState> {
  let link = '';
  const state = await formStateOf(async () => {
    link = await serverCaller().account.makeResetLink({ accountId: textOf(data, 'accountId') });
    return { status: 'done' };
  });
  // The browser names the site with every form that it sends.
  const origin = (await headers()).get('origin') ?? '';
  return state.done ? { ...state, typed: { link: `${origin}${link}` } } : state;
}
