'use server';

import { redirect } from 'next/navigation';
import { caseIdSchema } from '../../../../shared/schemas/case';
import { isRefusal, serverCaller } from '../../../_trpc/server';

/** Takes readings back; where they were decided on meanwhile, the list shows how. */
export async function withdrawUnit(data: FormData): Promise<void> {
  const id = caseIdSchema.parse(data.get('id'));
  try {
    await serverCaller().workingUnit.withdraw({ id });
  } catch (error) {
    if (!isRefusal(error, 'move-not-possible')) throw error;
  }
  redirect('/submissions');
}
