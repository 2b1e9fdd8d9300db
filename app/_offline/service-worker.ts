/// <reference lib="webworker" />
import { NetworkFirst, type PrecacheEntry, Serwist, type SerwistPlugin } from 'serwist';
import { OFFLINE_PAGES } from './offline-pages';

declare const self: ServiceWorkerGlobalScope;
/** Filled in by the build: the files of the pages, and the name of the build. */
declare const STATIC_FILES: PrecacheEntry[];
declare const BUILD: string;

const PAGES = `pages-${BUILD}`;

/**
 * Fetches the pages as a visitor who is not signed in, headers included: a page's policy and the nonces in it belong
 * together, so the stored answer is whole, and nobody's name is in it.
 */
async function storePages(): Promise<void> {
  const cache = await caches.open(PAGES);
  await Promise.all(
    OFFLINE_PAGES.map(async (path) => {
      const answer = await fetch(path, { credentials: 'omit', cache: 'no-store' });
      if (!answer.ok) throw new Error(`${path} answered ${answer.status}.`);
      await cache.put(path, answer);
    }),
  );
}

/** Without a network the stored page stands in; nothing that came for a signed-in visitor is ever stored. */
const storedInstead: SerwistPlugin = {
  cacheWillUpdate: async () => null,
  handlerDidError: async ({ request }) => {
    const { pathname } = new URL(request.url);
    const stored = await (await caches.open(PAGES)).match(pathname);
    return stored ?? Response.redirect('/bench?away=1', 302);
  },
};

const serwist = new Serwist({
  precacheEntries: STATIC_FILES,
  skipWaiting: true,
  clientsClaim: true,
  runtimeCaching: [
    {
      matcher: ({ request, sameOrigin }) => sameOrigin && request.mode === 'navigate',
      handler: new NetworkFirst({ cacheName: PAGES, networkTimeoutSeconds: 6, plugins: [storedInstead] }),
    },
  ],
});

/**
 * A stored answer carries an address without a fragment, and a worker would take that for its own; the built pages hand
 * it its start in the fragment. An answer made here has none, so that the worker keeps the address it was asked for by.
 */
async function workerScript(request: Request): Promise<Response> {
  const [address = ''] = request.url.split('#');
  const { body, status, headers } = (await serwist.matchPrecache(address)) ?? (await fetch(request));
  return new Response(body, { status, headers });
}

self.addEventListener('fetch', (event) => {
  if (event.request.destination !== 'worker') return;
  event.stopImmediatePropagation();
  event.respondWith(workerScript(event.request));
});
self.addEventListener('install', (event) => event.waitUntil(storePages()));
self.addEventListener('activate', (event) => {
  const old = caches.keys().then((names) => names.filter((name) => name.startsWith('pages-') && name !== PAGES));
  event.waitUntil(old.then((names) => Promise.all(names.map((name) => caches.delete(name)))));
});
serwist.addEventListeners();
