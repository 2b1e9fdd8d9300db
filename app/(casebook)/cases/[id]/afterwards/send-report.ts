'use server';

import { z } from 'zod';
import { AFTER_KINDS, type AfterOutcome } from '../../../../../shared/schemas/afterwards';
import type { FormState } from '../../../../_trpc/form-state';
import { formStateOf } from '../../../../_trpc/form-state-of';
import { serverCaller } from '../../../../_trpc/server';
import { textOf } from '../../../../(account)/_actions/text-of';

const kindOf = (text: string) => z.enum(AFTER_KINDS).catch('' as never).parse(text);

/** Sends the report, by the key where one was typed. The next key comes back in `typed.nextKey`, never in an address. */
export async function sendReport(_: FormState, data: FormData): Promise<FormState> {
  const [caseId, kind, months, key] = ['caseId', 'kind', 'months', 'key'].map((name) => textOf(data, name).trim()) as [
    string,
    string,
    string,
    string,
  ];
  const typed = { kind, months, key };
  let nextKey = '';
  const call = async (): Promise<AfterOutcome> => {
    const { afterReport } = serverCaller();
    const report = { caseId, kind: kindOf(kind), months: months === '' ? Number.NaN : Number(months) };
    const outcome = key === '' ? await afterReport.send(report) : await afterReport.sendByKey({ ...report, key });
    if (outcome.status === 'done') nextKey = outcome.key ?? '';
    return outcome;
  };
  const state = await formStateOf(call, typed);
  return nextKey === '' ? state : { ...state, typed: { nextKey } };
}
