import { createHash } from 'node:crypto';
import type { OutgoingHttpHeaders } from 'node:http';
import type { HeldAnswer } from './held-response';

const NONCE = /'nonce-([^']+)' 'strict-dynamic'/;
const INLINE_SCRIPT = /<script(?![^>]*\ssrc=)[^>]*>([\s\S]*?)<\/script>/g;

/** An answer that is the same for everybody who asks, byte for byte, and can be asked for with If-None-Match. */
export type FixedAnswer = { headers: OutgoingHttpHeaders; body: Buffer; etag: string };

/**
 * Takes out of an answer what is another each time. Scripts of a page that is made once for all cannot be let run by a nonce, which
 * is good for one answer: its policy names the very scripts that stand in it by their hashes instead (Content Security Policy
 * Level 3, section 1.2.2), and those that the page loads by being of this site. Whoever has the answer must ask whether it still
 * holds.
 */
export function fixedAnswer({ headers, body }: HeldAnswer): FixedAnswer {
  const policy = String(headers['content-security-policy'] ?? '');
  const nonce = NONCE.exec(policy)?.[1];
  const text = nonce === undefined ? null : body.toString('utf8').replaceAll(nonce, '');
  const bytes = text === null ? body : Buffer.from(text);
  const etag = `W/"${createHash('sha256').update(bytes).digest('base64url')}"`;
  return {
    body: bytes,
    etag,
    headers: {
      ...withoutNonce(headers, nonce),
      ...(text === null ? {} : { 'content-security-policy': policy.replace(NONCE, scriptHashes(text).join(' ')).trim() }),
      'cache-control': 'private, no-cache',
      vary: [headers.vary, 'Cookie'].flat().filter(Boolean).join(', '),
      etag,
    },
  };
}

/** Addresses that the page is to load ahead carry the nonce, too. */
function withoutNonce(headers: OutgoingHttpHeaders, nonce: string | undefined): OutgoingHttpHeaders {
  if (nonce === undefined || headers.link === undefined) return headers;
  return { ...headers, link: [headers.link].flat().map((link) => link.replaceAll(nonce, '')) };
}

function scriptHashes(html: string): string[] {
  const scripts = [...html.matchAll(INLINE_SCRIPT)].map(([, script = '']) => script);
  return [...new Set(scripts)].map((script) => `'sha256-${createHash('sha256').update(script).digest('base64')}'`);
}
