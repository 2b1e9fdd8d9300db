import type { Context } from '../../../server/trpc/context';

/** A visitor who is not signed in, on a page of this site: what a hand-made context is spread from. */
export const ownPage: Pick<Context, 'actor' | 'request' | 'setCookie'> = {
  actor: null,
  request: { headers: new Headers(), sameOrigin: true, address: '192.0.2.7', isSecure: false },
  setCookie: () => {},
};
