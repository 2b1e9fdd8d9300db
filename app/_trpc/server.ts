import 'server-only';
import { headers } from 'next/headers';
import { cache } from 'react';
import { createContext } from '../../server/trpc/context';
import { logError } from '../../server/trpc/log-error';
import { createCaller } from '../../server/trpc/root';

const requestContext = cache(async () => createContext(await headers()));

/** Calls procedures from a server component, without HTTP; the same caller within one request. */
export const serverCaller = cache(() => createCaller(requestContext, { onError: logError }));

/** Whether an error is the refusal of this code, such as `case-not-found`. */
export function isRefusal(error: unknown, code: string): boolean {
  const cause = error instanceof Error ? error.cause : undefined;
  return typeof cause === 'object' && cause !== null && 'code' in cause && cause.code === code;
}
