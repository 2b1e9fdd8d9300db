'use server';

import { redirect } from 'next/navigation';
import type { ReportReason } from '../../../../../shared/schemas/review';
import type { FormState } from '../../../../_trpc/form-state';
import { formStateOf } from '../../../../_trpc/form-state-of';
import { serverCaller } from '../../../../_trpc/server';

/** Sends what somebody has against a case to the moderators. */
export async function sendReport(_: FormState, data: FormData): Promise<FormState> {
  const [id, reason, text, website] = ['id', 'reason', 'text', 'website'].map((name) => String(data.get(name) ?? ''));
  const input = { id: id ?? '', reason: reason as ReportReason, text: text ?? '', website: website ?? '' };
  const state = await formStateOf(() => serverCaller().report.send(input));
  return state.done ? redirect(`/cases/${id}?reported=1`) : state;
}
