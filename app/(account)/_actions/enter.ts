'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import type { FormState } from '../../_trpc/form-state';
import { formStateOf } from '../../_trpc/form-state-of';
import { serverCaller } from '../../_trpc/server';
import { safePath } from '../_parts/safe-path';
import { textOf } from './text-of';

/** The header names who is signed in: every page is made anew. */
function goOn(path: string): never {
  revalidatePath('/', 'layout');
  redirect(path);
}

export async function signUp(_: FormState, data: FormData): Promise<FormState> {
  const [name, password] = [textOf(data, 'name'), textOf(data, 'password')];
  const state = await formStateOf(() => serverCaller().account.signUp({ name, password }), { name });
  return state.done ? goOn(safePath(data.get('next'))) : state;
}

export async function signIn(_: FormState, data: FormData): Promise<FormState> {
  const [name, password] = [textOf(data, 'name'), textOf(data, 'password')];
  const state = await formStateOf(() => serverCaller().account.signIn({ name, password }), { name });
  return state.done ? goOn(safePath(data.get('next'))) : state;
}

export async function resetPassword(_: FormState, data: FormData): Promise<FormState> {
  const [token, password] = [textOf(data, 'token'), textOf(data, 'password')];
  const state = await formStateOf(() => serverCaller().account.resetPassword({ token, password }));
  return state.done ? goOn('/sign-in?changed=1') : state;
}
