import type { PrismaClient } from '../../../prisma/generated/client';
import { findActor } from '../../../server/accounts/find-actor';
import { createCaller } from '../../../server/trpc/root';
import { ownPage } from '../trpc/test-request';

type Options = { address?: string; isSecure?: boolean; sameOrigin?: boolean };

/** A browser in front of the procedures: it keeps the cookies that it is handed and sends them again. */
export function visitor(db: PrismaClient, { address = '192.0.2.7', isSecure = false, sameOrigin = true }: Options = {}) {
  const jar = new Map<string, string>();
  /** Every cookie that was handed over, as it was written. */
  const handed: string[] = [];
  const setCookie = (cookie: string) => {
    handed.push(cookie);
    const [, name = '', value = ''] = /^([^=]+)=([^;]*)/.exec(cookie) ?? [];
    if (value === '' || /max-age=0/i.test(cookie)) jar.delete(name);
    else jar.set(name, value);
  };
  const caller = createCaller(async () => {
    const headers = new Headers({ cookie: [...jar].map(([name, value]) => `${name}=${value}`).join('; ') });
    return {
      ...ownPage,
      db,
      casebook: () => Promise.reject(new Error('No account needs the casebook.')),
      actor: await findActor(db, headers),
      request: { headers, sameOrigin, address, isSecure },
      setCookie,
    };
  });
  return { account: caller.account, handed, jar };
}
