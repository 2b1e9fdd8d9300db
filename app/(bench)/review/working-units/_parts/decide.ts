'use server';

import { redirect } from 'next/navigation';
import { caseIdSchema } from '../../../../../shared/schemas/case';
import { isRefusal, serverCaller } from '../../../../_trpc/server';

/** Takes a moderator's decision from the form; where somebody was quicker, the list says so by leaving it out. */
export async function decide(data: FormData): Promise<void> {
  const id = caseIdSchema.parse(data.get('id'));
  try {
    await serverCaller().workingUnit.decide({ id, accept: data.get('accept') === 'yes' });
  } catch (error) {
    if (!isRefusal(error, 'move-not-possible')) throw error;
  }
  redirect('/review/working-units');
}
