import { TRPCError } from '@trpc/server';
import { createContext } from '../../../../server/trpc/context';
import { logError } from '../../../../server/trpc/log-error';
import { createCaller } from '../../../../server/trpc/root';

/** What the site holds about who is signed in, as a file to keep. */
export async function GET(request: Request): Promise<Response> {
  try {
    const data = await createCaller(await createContext(request.headers), { onError: logError }).account.download();
    return new Response(`${JSON.stringify(data, null, 2)}\n`, {
      headers: {
        'content-type': 'application/json; charset=utf-8',
        'content-disposition': 'attachment; filename="second-bench-account.json"',
        'cache-control': 'no-store',
      },
    });
  } catch (error) {
    if (!(error instanceof TRPCError) || error.code !== 'UNAUTHORIZED') throw error;
    return new Response(null, { status: 303, headers: { location: '/sign-in?next=/account' } });
  }
}
