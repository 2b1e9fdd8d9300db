'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import type { FormState } from '../../_trpc/form-state';
import { formStateOf } from '../../_trpc/form-state-of';
import { serverCaller } from '../../_trpc/server';
import { textOf } from './text-of';

function leave(path: string): never {
  revalidatePath('/', 'layout');
  redirect(path);
}

export async function signOut(): Promise<FormState> {
  const state = await formStateOf(() => serverCaller().account.signOut());
  return state.done ? leave('/sign-in?out=1') : state;
}

export async function signOutEverywhere(): Promise<FormState> {
  const state = await formStateOf(() => serverCaller().account.signOutEverywhere());
  return state.done ? leave('/sign-in?out=everywhere') : state;
}

export async function changePassword(_: FormState, data: FormData): Promise<FormState> {
  const [current, password] = [textOf(data, 'current'), textOf(data, 'password')];
  return formStateOf(() => serverCaller().account.changePassword({ current, password }));
}

export async function deleteAccount(_: FormState, data: FormData): Promise<FormState> {
  const password = textOf(data, 'password');
  const state = await formStateOf(() => serverCaller().account.delete({ password }));
  return state.done ? leave('/sign-in?deleted=1') : state;
}
