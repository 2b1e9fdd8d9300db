import type { IncomingMessage, ServerResponse } from 'node:http';
import { promisify } from 'node:util';
import { gzip } from 'node:zlib';
import type { FixedAnswer } from './fixed-answer';

const compress = promisify(gzip);
const TAKES_GZIP = /\bgzip\b(?!\s*;\s*q=0(?:\.0*)?\s*(?:,|$))/i;

/** A fixed answer as it is kept: also compressed, once somebody has asked for that. */
export class KeptAnswer {
  #compressed: Buffer | null = null;

  constructor(readonly answer: FixedAnswer) {}

  /** Bytes that it takes. */
  get size(): number {
    return this.answer.body.length + (this.#compressed?.length ?? 0);
  }

  async compressed(): Promise<Buffer> {
    this.#compressed ??= await compress(this.answer.body);
    return this.#compressed;
  }
}

/** Sends an answer as whoever asks can take it; nothing but its name where they have it already (RFC 9110, section 13.1.2). */
export async function sendAnswer(kept: KeptAnswer, request: Pick<IncomingMessage, 'headers'>, response: ServerResponse): Promise<void> {
  const { headers, etag } = kept.answer;
  for (const [name, value] of Object.entries(headers)) if (value !== undefined) response.setHeader(name, value);
  if (isKnown(request.headers['if-none-match'], etag)) {
    for (const name of ['content-type', 'content-length']) response.removeHeader(name);
    response.writeHead(304).end();
    return;
  }
  const takesGzip = TAKES_GZIP.test(String(request.headers['accept-encoding'] ?? ''));
  const body = takesGzip ? await kept.compressed() : kept.answer.body;
  if (takesGzip) response.setHeader('content-encoding', 'gzip');
  response.writeHead(200, { 'content-length': body.length }).end(body);
}

function isKnown(named: string | undefined, etag: string): boolean {
  if (named === undefined) return false;
  return named.trim() === '*' || named.split(',').some((name) => name.trim() === etag);
}
