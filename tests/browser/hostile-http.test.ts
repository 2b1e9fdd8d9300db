import fc from 'fast-check';
import { inject, describe, expect, it } from 'vitest';
import { everyRoute } from './every-route';

/**
 * What each address of the site is filled with, for the parts in brackets: something that is there. An address that the app folder
 * has and this table lacks fails the first test.
 */
const ROUTES: Record<string, Record<string, string>> = {
  ...Object.fromEntries(
    [
      '/ /account /afterwards /bench /bench/sheet /casebook /cases /data /devices /favicon.ico /fixes /icon.svg /keeper /log',
      '/manifest.webmanifest /method /parts /plan /post /review /review/health /review/reports /review/words /review/working-units',
      '/robots.txt /safety /search /search/similar /sign-in /sign-up /sitemap.xml /submissions /symptoms /words',
      '/api/account/download /api/alive /api/log /api/metrics /api/photos /api/ready',
    ]
      .join(' ')
      .split(' ')
      .map((route) => [route, {}]),
  ),
  '/cases/[id]': { id: 'aaaaaaaaaaaaaaaa' },
  '/cases/[id]/afterwards': { id: 'aaaaaaaaaaaaaaaa' },
  '/cases/[id]/report': { id: 'aaaaaaaaaaaaaaaa' },
  '/devices/[slug]': { slug: 'quellbrook-8' },
  '/devices/[slug]/readings': { slug: 'quellbrook-8-rev-a' },
  '/fixes/[slug]': { slug: 'replace-video-ram' },
  '/parts/[role]': { role: 'video-ram' },
  '/reset/[token]': { token: 'aaaaaaaaaaaaaaaaaaaaaaaa' },
  '/review/[id]': { id: 'aaaaaaaaaaaaaaaa' },
  '/review/[id]/edit': { id: 'aaaaaaaaaaaaaaaa' },
  '/symptoms/[slug]': { slug: 'grey-screen' },
  '/api/data/[file]': { file: 'datapackage.json' },
  '/api/feeds/[kind]/[slug]': { kind: 'symptoms', slug: 'grey-screen' },
  '/api/photos/[id]/[size]': { id: 'aaaaaaaaaaaaaaaa', size: 'small' },
  '/api/trpc/[trpc]': { trpc: 'casebook.overview' },
  '/api/v1/[[...path]]': { '...path': 'cases' },
};

const PARTS = [
  '%ff',
  '%00',
  '%',
  '%zz',
  '..%2f..%2fetc%2fpasswd',
  '%E2%80%AEabc',
  '__proto__',
  'constructor',
  'x'.repeat(3000),
  '%F0%9F%94%A7',
  "'%20OR%201=1--",
  '-1',
  ' ',
];
const NAMES =
  'q on is not why no over strike symptom part fix category sort cursor after next kind month tab area unit draft done take at __proto__ q[] input batch'.split(
    ' ',
  );
const VALUES = [
  ...PARTS,
  '',
  '1e999',
  '2026-13',
  '"}',
  '%3Cscript%3Ealert(1)%3C/script%3E',
  'symptom.grey-screen',
  'check.clock-at-processor.nonsense',
  'https://elsewhere.example',
  '{"a":',
];
const METHODS = ['POST', 'PUT', 'PATCH', 'DELETE', 'OPTIONS', 'HEAD'];
const TYPES = [
  'application/json',
  'text/plain',
  'multipart/form-data',
  'multipart/form-data; boundary=a',
  'application/x-www-form-urlencoded',
  'application/octet-stream',
  'nonsense',
  'text/x-component',
];
const BODIES = [
  '',
  '{',
  'null',
  '--a\r\nContent-Disposition: form-data; name="$ACTION_ID_00"\r\n\r\n\r\n--a--\r\n',
  '$ACTION_REF_1=&$ACTION_1:0={"id":"x"}',
  '\u0000\uFFFF',
  '['.repeat(20_000),
  `{"json":${'{"a":'.repeat(3000)}1${'}'.repeat(3000)}}`,
];
const COOKIES = [
  'second-bench.session_token=%ff',
  'second-bench.session_token=a.b',
  `second-bench.session_token=${'x'.repeat(3000)}`,
  '=;;=',
  '',
];

/** The longest answer that an address gives to a stranger but for the data files, in bytes: the vocabulary with all its words. */
const LONGEST_ANSWER = 4_000_000;
/** Far above any of the answers on a busy machine, and below what a hung request takes. */
const LONGEST_MS = 30_000;
const TRACE = /\n\s+at [\w.<]+ ?\(|node_modules\/|Prisma|SQLITE_|[a-z-]+\.ts:\d+/;

const query = fc
  .array(
    fc.tuple(
      fc.constantFrom(...NAMES),
      fc.oneof({ weight: 4, arbitrary: fc.constantFrom(...VALUES) }, fc.string({ unit: 'binary', maxLength: 30 }).map(encoded)),
    ),
    { maxLength: 12 },
  )
  .map((pairs) => pairs.map(([name, value]) => `${name}=${value}`).join('&'));

/** A half of a surrogate pair has no encoding. */
function encoded(text: string): string {
  return encodeURIComponent(Buffer.from(text).toString());
}

const fill = (route: string, parts: Record<string, string>) =>
  route.replace(/\[+([^\]]+)\]+/g, (_, name: string) => parts[name] ?? '');

/** Asks, and says what is wrong with the answer; null where nothing is. A connection that is closed on a request that is too long is an answer. */
async function faultOf(path: string, init: RequestInit = {}): Promise<string | null> {
  const said = `${init.method ?? 'GET'} ${path.slice(0, 300)} ${JSON.stringify(init.headers ?? {}).slice(0, 120)} ${String(init.body ?? '').slice(0, 60)}`;
  let response: Response;
  let body: string;
  try {
    response = await fetch(`${inject('serverUrl')}${path}`, {
      redirect: 'manual',
      signal: AbortSignal.timeout(LONGEST_MS),
      ...init,
    });
    body = await response.text();
  } catch (error) {
    if ((error as Error).name === 'TimeoutError') return `${said}: no answer`;
    return (init.body as string | undefined)?.length ? null : `${said}: ${String((error as Error).cause ?? error)}`;
  }
  if (response.status >= 500) return `${said}: ${response.status} ${body.slice(0, 200)}`;
  if (TRACE.test(body)) return `${said}: a trace, ${TRACE.exec(body)?.[0]}`;
  if (body.length > LONGEST_ANSWER) return `${said}: ${body.length} bytes`;
  return null;
}

/** Eight at a time. */
async function faultsOf(asks: (() => Promise<string | null>)[]): Promise<string[]> {
  const faults: string[] = [];
  const waiting = [...asks];
  const lane = async () => {
    for (let ask = waiting.pop(); ask !== undefined; ask = waiting.pop()) {
      const fault = await ask();
      if (fault !== null) faults.push(fault);
    }
  };
  await Promise.all(Array.from({ length: 8 }, lane));
  return faults;
}

describe('every address of the site', () => {
  it('is in the table, and the table has no other', () => {
    expect(Object.keys(ROUTES).sort()).toEqual(everyRoute());
  });

  it('takes whatever stands in its parts, and hostile parameters', async () => {
    const queries = fc.sample(query, { numRuns: Object.keys(ROUTES).length * 2, seed: 20_261_125 });
    const asks = Object.entries(ROUTES).flatMap(([route, parts], i) => [
      ...[0, 1].map((n) => () => faultOf(`${fill(route, parts)}?${queries[i * 2 + n]}`)),
      ...Object.keys(parts).flatMap((name) => PARTS.map((part) => () => faultOf(fill(route, { ...parts, [name]: part })))),
    ]);
    expect(await faultsOf(asks)).toEqual([]);
  });

  it('takes every method, content type, body and cookie', async () => {
    const drawn = fc.sample(
      fc.record({
        method: fc.constantFrom(...METHODS),
        type: fc.constantFrom(...TYPES),
        body: fc.constantFrom(...BODIES),
        cookie: fc.constantFrom(...COOKIES),
        action: fc.boolean(),
      }),
      { numRuns: Object.keys(ROUTES).length * 4, seed: 20_261_126 },
    );
    const asks = Object.entries(ROUTES).flatMap(([route, parts], i) =>
      drawn.slice(i * 4, i * 4 + 4).map(
        ({ method, type, body, cookie, action }) =>
          () =>
            faultOf(fill(route, parts), {
              method,
              headers: { 'content-type': type, cookie, ...(action && { 'next-action': '00'.repeat(21) }) },
              ...(method !== 'HEAD' && { body }),
            }),
      ),
    );
    expect(await faultsOf(asks)).toEqual([]);
  });

  it('refuses what is far too long before it costs anything', async () => {
    const body = 'x'.repeat(10_000_000);
    const many = Array.from({ length: 1000 }, () => 'lookup.ask').join(',');
    const deep = `{"0":${'['.repeat(90_000)}${']'.repeat(90_000)}}`;
    const json = { 'content-type': 'application/json' };
    const asks = [
      ...['/api/photos', '/api/trpc/lookup.ask', '/api/v1/cases', '/', '/sign-in', '/post', '/api/ready'].map(
        (path) => () => faultOf(path, { method: 'POST', headers: json, body }),
      ),
      () => faultOf(`/api/trpc/${many}?batch=1`),
      () => faultOf(`/api/trpc/${many.slice(0, 4000)}?batch=1`, { method: 'POST', headers: json, body: '{}' }),
      () => faultOf('/api/trpc/lookup.ask?batch=1', { method: 'POST', headers: json, body: deep }),
      () => faultOf(`/?q=${'grey+'.repeat(2000)}`),
      () => faultOf(`/?${'q=a&'.repeat(3000)}`),
    ];
    expect(await faultsOf(asks)).toEqual([]);
  });
});
