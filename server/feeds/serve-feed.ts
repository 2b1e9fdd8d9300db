import { TRPCError } from '@trpc/server';
import { getHTTPStatusCodeFromError } from '@trpc/server/http';
import { isAppError } from '../../shared/errors';
import { slugSchema } from '../../shared/schemas/terms';
import { getEnv } from '../env';
import { problem } from '../http-api/problem';
import { siteOrigin } from '../site-origin';
import { createContext } from '../trpc/context';
import { logError } from '../trpc/log-error';
import { createCaller } from '../trpc/root';
import { caseFeed } from './case-feed';

const NEWEST = 30;

type Caller = ReturnType<typeof createCaller>;

/** What a feed is of: its name, its page, and which cases it has. */
const SUBJECTS: Record<string, (caller: Caller, slug: string) => Promise<{ title: string; path: string; scope: object }>> = {
  cases: async () => ({ title: 'New cases', path: '/cases', scope: {} }),
  symptoms: async (caller, slug) => {
    const { label } = await caller.browse.getSymptom({ slug });
    return { title: `New cases: ${label}`, path: `/symptoms/${slug}`, scope: { symptom: slug } };
  },
  devices: async (caller, slug) => {
    const { label } = await caller.browse.getDevice({ slug });
    return { title: `New cases: ${label}`, path: `/devices/${slug}`, scope: { device: slug } };
  },
};

/** An Atom feed of the newest cases of a symptom, of a device, or of all. */
export async function serveFeed({ kind, slug, headers }: { kind: string; slug: string; headers: Headers }): Promise<Response> {
  // Not what every object has of its own, such as "constructor".
  const subject = Object.hasOwn(SUBJECTS, kind) ? SUBJECTS[kind] : undefined;
  if (!subject || !slugSchema.safeParse(slug).success) return problem(404, { detail: 'There is no such feed.' });
  try {
    const caller = createCaller(await createContext(headers), { onError: logError });
    const { title, path, scope } = await subject(caller, slug);
    const { cases } = await caller.casebook.listCases({ ...scope, take: NEWEST });
    const origin = siteOrigin(headers, getEnv());
    const text = caseFeed({
      title: `${title} · Second Bench`,
      origin,
      self: `${origin}${path}/feed.atom`,
      page: `${origin}${path}`,
      cases,
      emptySince: new Date().toISOString().slice(0, 7),
    });
    return new Response(text, {
      headers: {
        'content-type': 'application/atom+xml; charset=utf-8',
        'cache-control': 'public, max-age=300',
        'access-control-allow-origin': '*',
      },
    });
  } catch (error) {
    if (error instanceof TRPCError && error.code === 'NOT_FOUND') return problem(404, { detail: 'There is no such feed.' });
    if (error instanceof TRPCError && isAppError(error.cause)) {
      return problem(getHTTPStatusCodeFromError(error), { detail: error.cause.message, code: error.cause.code });
    }
    throw error;
  }
}
