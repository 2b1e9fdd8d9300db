import type { IncomingMessage } from 'node:http';
import { SESSION_COOKIE } from '../accounts/session-cookie';

/** Longer addresses are hardly asked for twice. */
const LONGEST_ADDRESS = 4_000;
/** Where an answer to a guest can be kept: what of it lasts is then learned from the procedures that it called. */
const PATHS: ReadonlySet<string> = new Set(['/', '/api/trpc/lookup.ask']);
/** Ask for a part of an answer, or for another form of it. */
const PARTIAL = ['rsc', 'next-router-state-tree', 'next-router-prefetch', 'next-action', 'trpc-accept', 'range'];

/**
 * The name under which the answer to a request can be kept, or null where it cannot: a plain question of somebody who is not signed in.
 * It is the address as it was asked for: whatever stands in it can change the answer.
 */
export function keepableKey({ method, url = '', headers }: Pick<IncomingMessage, 'method' | 'url' | 'headers'>): string | null {
  if (method !== 'GET' || url.length > LONGEST_ADDRESS) return null;
  if (!PATHS.has(url.split('?', 1)[0] ?? '')) return null;
  if (PARTIAL.some((name) => name in headers) || 'content-length' in headers || 'transfer-encoding' in headers) return null;
  return headers.cookie?.includes(SESSION_COOKIE) ? null : url;
}
