import { TRPCError } from '@trpc/server';
import { createContext } from '../../../server/trpc/context';
import { logError } from '../../../server/trpc/log-error';
import { createCaller } from '../../../server/trpc/root';

/** The whole log of decisions as JSON Lines, for moderators. */
export async function GET(request: Request): Promise<Response> {
  try {
    const lines = await createCaller(await createContext(request.headers), { onError: logError }).log.export();
    return new Response(lines, {
      headers: {
        'content-type': 'application/jsonl; charset=utf-8',
        'content-disposition': 'attachment; filename="second-bench-log.jsonl"',
        'cache-control': 'no-store',
      },
    });
  } catch (error) {
    if (!(error instanceof TRPCError) || (error.code !== 'UNAUTHORIZED' && error.code !== 'FORBIDDEN')) throw error;
    return new Response(null, { status: 303, headers: { location: '/sign-in?next=/log' } });
  }
}
