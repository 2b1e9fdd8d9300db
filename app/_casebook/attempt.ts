import { unstable_rethrow } from 'next/navigation';
import { isRefusal } from '../_trpc/server';

const REFUSALS = ['casebook-empty', 'device-not-found', 'case-not-found', 'entry-not-found'] as const;

/** Why there is no answer: a refusal that the page has words for, or a fault that the server has logged. */
export type TroubleKind = (typeof REFUSALS)[number] | 'failed';

export type Attempt<T> = { value: T; trouble: null } | { value: null; trouble: TroubleKind };

/**
 * Asks the casebook and returns what went wrong instead of throwing it, so that a page without scripts can
 * say so itself. The caller logs what is not a refusal.
 */
export async function attempt<T>(ask: () => Promise<T>): Promise<Attempt<T>> {
  try {
    return { value: await ask(), trouble: null };
  } catch (error) {
    unstable_rethrow(error);
    return { value: null, trouble: REFUSALS.find((code) => isRefusal(error, code)) ?? 'failed' };
  }
}
