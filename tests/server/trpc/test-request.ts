import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Context } from '../../../server/trpc/context';

/** A visitor who is not signed in, on a page of this site: what a hand-made context is spread from. */
export const ownPage: Pick<Context, 'actor' | 'request' | 'photoFolder' | 'setCookie' | 'search'> = {
  actor: null,
  request: { headers: new Headers(), sameOrigin: true, address: '192.0.2.7', isSecure: false },
  photoFolder: join(tmpdir(), 'second-bench-no-photos-here'),
  setCookie: () => {},
  search: () => {
    throw new Error('This test has no search; give its context one.');
  },
};
