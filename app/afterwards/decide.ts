'use server';

import { revalidatePath } from 'next/cache';
import type { FormState } from '../_trpc/form-state';
import { formStateOf } from '../_trpc/form-state-of';
import { serverCaller } from '../_trpc/server';
import { textOf } from '../(account)/_actions/text-of';

/** Accepts or declines one report. */
export async function decide(_: FormState, data: FormData): Promise<FormState> {
  const state = await formStateOf(async () => {
    await serverCaller().afterReport.decide({ id: textOf(data, 'id'), accept: textOf(data, 'accept') === 'yes' });
    return { status: 'done' };
  });
  if (state.done) revalidatePath('/afterwards');
  return state;
}
