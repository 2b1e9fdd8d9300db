import { createContext } from '../../../server/trpc/context';
import { metricsText } from '../../../server/watching/metrics-text';

/** The metrics as OpenMetrics text, for a keeper or whoever holds the metrics token; 404 for anybody else. */
export async function GET(request: Request): Promise<Response> {
  const { actor, db } = await createContext(request.headers);
  const text = await metricsText(db, { actor, authorization: request.headers.get('authorization') });
  if (text === null) return new Response('Not found.\n', { status: 404, headers: { 'content-type': 'text/plain; charset=utf-8' } });
  return new Response(text.body, { headers: { 'content-type': text.contentType, 'cache-control': 'no-store' } });
}
