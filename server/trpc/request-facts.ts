import type { Env } from '../env';

/** What a procedure may know of the request. */
export type RequestFacts = {
  headers: Headers;
  /** Whether a page of this site sent it. */
  sameOrigin: boolean;
  /** Address of whoever sent it, for limits only: it is never stored or logged. */
  address: string;
  /** Whether it came over TLS, so that cookies can be kept to it. */
  isSecure: boolean;
};

type Settings = Pick<Env, 'siteUrl' | 'trustProxy'>;

/** Reads the facts off the headers. What a proxy adds counts only where the settings say that there is one. */
export function requestFacts(headers: Headers, settings: Settings): RequestFacts {
  return {
    headers,
    sameOrigin: isSameOrigin(headers, settings),
    address: addressOf(headers, settings),
    isSecure: isSecure(headers, settings),
  };
}

/**
 * The browser names the page's origin with everything that changes something; where it names none, it still says
 * whether the page was of the same origin. A program that says neither is refused.
 */
function isSameOrigin(headers: Headers, settings: Settings): boolean {
  const origin = headers.get('origin');
  if (origin === null) return headers.get('sec-fetch-site') === 'same-origin';
  if (settings.siteUrl) return origin === new URL(settings.siteUrl).origin;
  const host = (settings.trustProxy && headers.get('x-forwarded-host')) || headers.get('host');
  return host !== null && (origin === `http://${host}` || origin === `https://${host}`);
}

/** Behind a proxy, the last address it added; without one, what the server itself put there, or a sender pretended. */
function addressOf(headers: Headers, { trustProxy }: Settings): string {
  const hops = (headers.get('x-forwarded-for') ?? '').split(',').map((hop) => hop.trim());
  return (trustProxy ? hops.at(-1) : hops[0]) || 'unknown';
}

function isSecure(headers: Headers, { siteUrl, trustProxy }: Settings): boolean {
  return siteUrl?.startsWith('https:') || (trustProxy && headers.get('x-forwarded-proto') === 'https');
}
