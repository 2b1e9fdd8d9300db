import { packageDescriptor } from '../../shared/domain/open-data/package-descriptor';
import { isAppError } from '../../shared/errors';
import { getLimits, takeTurn } from '../accounts/limits';
import { getDb } from '../db';
import { getEnv } from '../env';
import { problem } from '../http-api/problem';
import { requestFacts } from '../trpc/request-facts';
import { PACKAGE_FILES } from './package-files';

/** Any program on any site may read what is open. */
const OPEN = { 'access-control-allow-origin': '*', 'cache-control': 'no-cache' };

/** A file of the data package as an answer that is written while the database is read: it is never held whole. */
export async function servePackageFile(path: string, headers: Headers): Promise<Response> {
  try {
    await takeTurn(getLimits().downloadFrom, requestFacts(headers, getEnv()).address);
  } catch (refusal) {
    if (!isAppError(refusal)) throw refusal;
    return problem(429, { detail: refusal.message });
  }
  if (path === 'datapackage.json') {
    return Response.json(packageDescriptor(), { headers: OPEN });
  }
  const file = PACKAGE_FILES.get(path);
  if (!file) return problem(404, { detail: 'The data package has no such file; /data/datapackage.json lists them.' });
  return new Response(streamOf(file.pieces(getDb())), {
    headers: { ...OPEN, 'content-type': `${file.mediaType}; charset=utf-8` },
  });
}

/** Pieces as a stream that asks for the next one only when the last was taken. */
function streamOf(pieces: AsyncIterable<string>): ReadableStream<Uint8Array> {
  const encoder = new TextEncoder();
  const reader = pieces[Symbol.asyncIterator]();
  return new ReadableStream<Uint8Array>(
    {
      async pull(controller) {
        const { done, value } = await reader.next();
        if (done) controller.close();
        else controller.enqueue(encoder.encode(value));
      },
      async cancel() {
        await reader.return?.();
      },
    },
    { highWaterMark: 1 },
  );
}
