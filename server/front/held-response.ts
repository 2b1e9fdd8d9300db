import { type IncomingMessage, type OutgoingHttpHeaders, ServerResponse } from 'node:http';

/** An answer as it was made, before any of it is sent. */
export type HeldAnswer = { status: number; headers: OutgoingHttpHeaders; body: Buffer };

/** A response that belongs to no connection: whatever is written to it is held. */
class HeldResponse extends ServerResponse {
  readonly #chunks: Buffer[] = [];

  get body(): Buffer {
    return Buffer.concat(this.#chunks);
  }

  override flushHeaders(): void {}

  override write(chunk: unknown, ...rest: unknown[]): boolean {
    this.#take(chunk, rest);
    return true;
  }

  override end(...given: unknown[]): this {
    if (this.writableEnded) return this;
    const [chunk, ...rest] = given;
    if (chunk !== undefined && chunk !== null && typeof chunk !== 'function') this.#take(chunk, rest);
    // `writableEnded` and `writableFinished` are read off this.
    this.finished = true;
    this.emit('finish');
    this.emit('close');
    return this;
  }

  #take(chunk: unknown, [encoding]: unknown[]): void {
    const named = typeof encoding === 'string' ? (encoding as BufferEncoding) : undefined;
    this.#chunks.push(typeof chunk === 'string' ? Buffer.from(chunk, named) : Buffer.from(chunk as Uint8Array));
  }
}

/**
 * Has a request answered, and holds the answer instead of sending it. Null where whoever asked went away before it was whole; the
 * handler is told so.
 *
 * @param asker the response that whoever asked waits for.
 * @throws what the handler throws.
 */
export async function holdAnswer(
  request: IncomingMessage,
  asker: ServerResponse,
  handle: (request: IncomingMessage, response: ServerResponse) => Promise<void>,
): Promise<HeldAnswer | null> {
  const held = new HeldResponse(request);
  const ended = new Promise<void>((resolve) => held.once('close', resolve));
  const leave = () => {
    if (!held.writableEnded) held.emit('close');
  };
  asker.once('close', leave);
  await handle(request, held);
  await ended;
  asker.off('close', leave);
  if (!held.writableEnded) return null;
  return { status: held.statusCode, headers: { ...held.getHeaders() }, body: held.body };
}
