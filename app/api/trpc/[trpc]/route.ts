import { fetchRequestHandler } from '@trpc/server/adapters/fetch';
import { createContext } from '../../../../server/trpc/context';
import { logError } from '../../../../server/trpc/log-error';
import { appRouter } from '../../../../server/trpc/root';

const ENDPOINT = '/api/trpc';
/** Far above any honest question. */
const LONGEST_REQUEST = 200_000;

function handle(request: Request): Response | Promise<Response> {
  const length = request.method === 'GET' ? request.url.length : Number(request.headers.get('content-length') ?? Number.NaN);
  if (Number.isNaN(length)) return new Response('Say how long the request is.', { status: 411 });
  if (length > LONGEST_REQUEST) return new Response('The request is too long.', { status: 413 });
  return fetchRequestHandler({
    endpoint: ENDPOINT,
    req: request,
    router: appRouter,
    createContext: ({ resHeaders }) => createContext(request.headers, (cookie) => resHeaders.append('set-cookie', cookie)),
    onError: logError,
    maxBatchSize: 10,
    allowMethodOverride: true,
  });
}

export { handle as GET, handle as POST };
