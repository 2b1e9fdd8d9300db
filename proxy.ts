import { type NextRequest, NextResponse } from 'next/server';

/**
 * The content security policy of one answer. Scripts run only where they carry this answer's nonce, or were loaded by
 * one that does; pages get it on every script from Next, which reads it off the request's policy. Styles may stand in
 * attributes: bars are drawn that way.
 *
 * @param nonce unguessable and new for each answer.
 */
function policyFor(nonce: string): string {
  const isDev = process.env.NODE_ENV === 'development';
  return [
    "default-src 'self'",
    // React's development build names errors with eval; the built pages never need it.
    `script-src 'self' 'nonce-${nonce}' 'strict-dynamic'${isDev ? " 'unsafe-eval'" : ''}`,
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' blob: data:",
    "worker-src 'self'",
    "object-src 'none'",
    "base-uri 'self'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join('; ');
}

/** Puts the policy on every answer, and keeps browsers to TLS where the site is known under https. */
export function proxy(request: NextRequest): NextResponse {
  const nonce = Buffer.from(crypto.getRandomValues(new Uint8Array(18))).toString('base64');
  const policy = policyFor(nonce);
  const headers = new Headers(request.headers);
  headers.set('content-security-policy', policy);
  const response = NextResponse.next({ request: { headers } });
  response.headers.set('content-security-policy', policy);
  if (process.env.SITE_URL?.startsWith('https:')) response.headers.set('strict-transport-security', 'max-age=31536000');
  return response;
}

/** What is built in runs no scripts of its own: it needs no policy. */
export const config = { matcher: '/((?!_next/static|_next/image).*)' };
