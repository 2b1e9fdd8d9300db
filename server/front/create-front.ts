import type { IncomingMessage, ServerResponse } from 'node:http';
import { type Answering, type Source, watchAnswer } from './answering';
import { fixedAnswer } from './fixed-answer';
import { type HeldAnswer, holdAnswer } from './held-response';
import { keepableKey } from './keepable';
import { createKeptBodies } from './kept-bodies';
import { KeptAnswer, sendAnswer } from './send-answer';

export type Handler = (request: IncomingMessage, response: ServerResponse) => Promise<void>;

type Kept = { answer: KeptAnswer; again: Answering['again']; source: Source; size: number };

/**
 * Stands before the pages: what somebody who is not signed in asked before is answered as it was, as long as what is counted stays
 * as it is; all else is handed on. Whether an answer lasts is learned from the procedures that were called for it, never guessed.
 *
 * @param handle makes every answer.
 * @param mostBytes that answers may take in memory in all.
 */
export function createFront(handle: Handler, { mostBytes }: { mostBytes: number }): Handler {
  const bodies = createKeptBodies<Kept>(mostBytes);
  let currentModel: Source['current'] | null = null;

  const find = async (key: string) => {
    // Asking for it is also what has the casebook look for changes.
    const model = await currentModel?.().catch(() => null);
    return model ? bodies.find(key, model) : undefined;
  };

  const make = async (key: string, request: IncomingMessage, response: ServerResponse) => {
    const asked = { headers: request.headers };
    onlyAddress(request);
    let held: HeldAnswer | null = null;
    const { source, lasting, again } = await watchAnswer(async () => {
      held = await holdAnswer(request, response, handle);
    });
    if (held === null) return;
    if (!lasting || source === null || !isPlain(held)) return sendHeld(held, response);
    currentModel = source.current;
    const answer = new KeptAnswer(fixedAnswer(held));
    await sendAnswer(answer, asked, response);
    keep(key, { answer, again, source });
  };

  const keep = (key: string, kept: Omit<Kept, 'size'>) => bodies.keep(key, kept.source, { ...kept, size: kept.answer.size });

  return async (request, response) => {
    const key = keepableKey(request);
    if (key === null) return handle(request, response);
    const start = performance.now();
    const known = await find(key);
    if (known === undefined) return make(key, request, response);
    await sendAnswer(known.answer, request, response);
    // It may have been compressed for the first time.
    if (known.answer.size !== known.size) keep(key, known);
    for (const work of known.again) work((performance.now() - start) / 1000);
  };
}

/** Leaves of a request what the answer may hang on: its address. Nobody can put into an answer what others then get. */
function onlyAddress(request: IncomingMessage): void {
  request.headers = { host: 'localhost', accept: '*/*' };
}

/** Whether an answer is one that anybody may get again. */
function isPlain({ status, headers }: HeldAnswer): boolean {
  return status === 200 && headers['set-cookie'] === undefined;
}

function sendHeld({ status, headers, body }: HeldAnswer, response: ServerResponse): void {
  for (const [name, value] of Object.entries(headers)) if (value !== undefined) response.setHeader(name, value);
  response.writeHead(status, { 'content-length': body.length }).end(body);
}
