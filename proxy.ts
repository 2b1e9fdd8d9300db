import { type NextRequest, NextResponse } from 'next/server';
import { requestTurn } from './server/event-loop/take-turns';

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

/** Who watches the site hears from it at once, however busy it is. */
const WATCHED = new Set(['/healthz', '/readyz', '/metrics']);

/** A form of a page is never longer; photos have a door of their own. The framework's own limit for forms is the same. */
const LONGEST_FORM = 1_000_000;

/**
 * What the framework would fail on, where it stands in a request: an address that is not well encoded (RFC 3986, section 2.1), or a
 * form sent to a page that cannot be read. Null for every request that can be answered.
 */
async function refusalOf(request: NextRequest): Promise<{ status: number; told: string } | null> {
  const { pathname } = request.nextUrl;
  if (!isEncodedWell(pathname)) return { status: 400, told: 'This address is not well written: a % in it stands for nothing.' };
  const isForm = (request.headers.get('content-type') ?? '').startsWith('multipart/form-data');
  if (request.method !== 'POST' || !isForm || pathname.startsWith('/api/')) return null;
  if (Number(request.headers.get('content-length') ?? 0) > LONGEST_FORM) return { status: 413, told: 'This form is too long.' };
  try {
    await request.clone().formData();
    return null;
  } catch {
    return { status: 400, told: 'This form came cut short or damaged. Go back and send it again.' };
  }
}

function isEncodedWell(path: string): boolean {
  try {
    decodeURIComponent(path);
    return true;
  } catch {
    return false;
  }
}

/**
 * Lets requests begin one after the other, refuses what cannot be read, puts the policy on every other answer, and keeps browsers to TLS where the site is known under
 * https.
 */
export async function proxy(request: NextRequest): Promise<NextResponse> {
  if (!WATCHED.has(request.nextUrl.pathname)) await requestTurn();
  const refusal = await refusalOf(request);
  if (refusal !== null) {
    return new NextResponse(`${refusal.told}\n`, { status: refusal.status, headers: { 'content-type': 'text/plain; charset=utf-8' } });
  }
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
