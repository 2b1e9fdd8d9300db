import { TRPCError } from '@trpc/server';
import { getHTTPStatusCodeFromError } from '@trpc/server/http';
import { createContext } from '../../../server/trpc/context';
import { logError } from '../../../server/trpc/log-error';
import { createCaller } from '../../../server/trpc/root';
import { PHOTO_LIMITS, type PhotoOutcome } from '../../../shared/schemas/photo';

const answer = (outcome: PhotoOutcome, status = 200) =>
  Response.json(outcome, { status, headers: { 'cache-control': 'no-store' } });
const refuse = (reason: string, status: number) => answer({ kind: 'refused', reason }, status);

/** Takes the bytes of one photo for the draft that the address names. What it may be is the procedure's to say. */
export async function POST(request: Request): Promise<Response> {
  const context = await createContext(request.headers);
  if (context.actor === null) return refuse('Sign in first: photos are kept with the drafts of an account.', 401);
  const draftId = new URL(request.url).searchParams.get('draft') ?? '';
  const bytes = await readAtMost(request, PHOTO_LIMITS.bytes);
  if (bytes === null) return refuse(`This file is larger than ${PHOTO_LIMITS.bytes / 1_000_000} MB. Add a smaller copy.`, 413);
  try {
    const caller = createCaller(context, { onError: logError });
    return answer(await caller.photo.add({ draftId, bytes }));
  } catch (error) {
    if (!(error instanceof TRPCError)) throw error;
    const isBug = error.code === 'INTERNAL_SERVER_ERROR';
    const isMalformed = error.code === 'BAD_REQUEST';
    const reason = isBug ? 'It did not work, and it is not your doing. Try again.' : isMalformed ? 'This names no draft.' : error.message;
    return refuse(reason, getHTTPStatusCodeFromError(error));
  }
}

/** The body, or null as soon as it is longer than it may be. */
async function readAtMost(request: Request, most: number): Promise<Uint8Array<ArrayBuffer> | null> {
  if (Number(request.headers.get('content-length') ?? 0) > most) return null;
  const chunks: Uint8Array[] = [];
  let length = 0;
  const reader = request.body?.getReader();
  for (;;) {
    const { done, value } = (await reader?.read()) ?? { done: true, value: undefined };
    if (done || value === undefined) break;
    length += value.length;
    if (length > most) {
      await reader?.cancel();
      return null;
    }
    chunks.push(value);
  }
  return new Uint8Array(Buffer.concat(chunks));
}
