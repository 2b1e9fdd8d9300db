import 'server-only';
import { parseSetCookieHeader, toCookieOptions } from 'better-auth/cookies';
import { cookies, headers } from 'next/headers';
import { cache } from 'react';
import { createContext } from '../../server/trpc/context';
import { logError } from '../../server/trpc/log-error';
import { createCaller } from '../../server/trpc/root';

/** The context of the page or form that is being answered. Cookies are handed on from a form; a page sets none. */
const requestContext = cache(async () => {
  const jar = await cookies();
  return createContext(await headers(), (text) => {
    for (const [name, cookie] of parseSetCookieHeader(text)) {
      jar.set(name, decodeURIComponent(cookie.value), toCookieOptions(cookie));
    }
  });
});

/** Calls procedures from a server component or a form's action, without HTTP; the same caller within one request. */
export const serverCaller = cache(() => createCaller(requestContext, { onError: logError }));

/** Whether an error is the refusal of this code, such as `case-not-found`. */
export function isRefusal(error: unknown, code: string): boolean {
  const cause = error instanceof Error ? error.cause : undefined;
  return typeof cause === 'object' && cause !== null && 'code' in cause && cause.code === code;
}
