import { createHash } from 'node:crypto';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { tellFollowers } from '../../../server/change-feed/tell-followers';
import { forgetCasebook } from '../../../server/casebook/current-casebook';
import { getDb } from '../../../server/db';
import { createFront } from '../../../server/front/create-front';
import { randomCaseId } from '../../../server/ids';
import { changeStatus } from '../../../server/repositories/submission-history';
import { changeWords, undoWords } from '../../../server/services/words/change-words';
import { forgetUnread, writeUnread } from '../../../server/services/words/unread-words';
import { createContext } from '../../../server/trpc/context';
import { createCaller } from '../../../server/trpc/root';
import { openTestDatabase, type TestDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { smallCases } from '../fixtures/small-cases';
import { addPerson } from '../log/log-world';

const CASES = smallCases(30);
const NONCE = 'nonceNonceNonceNonceNonc';
let opened: TestDatabase;
let server: Server;
let root: string;
let door: { GET: (request: Request) => Response | Promise<Response> };
/** Addresses that were not answered by the front. */
let made: string[];
beforeEach(() => {
  made = [];
});

/** Stands for the pages: the look-up's real door, and a page that calls the same procedures as the look-up's. */
async function handle(request: IncomingMessage, response: ServerResponse): Promise<void> {
  made.push(request.url ?? '');
  const headers = new Headers(request.headers as Record<string, string>);
  const url = new URL(request.url ?? '', 'http://bench.example');
  if (url.pathname.startsWith('/api/')) {
    const answer = await door.GET(new Request(url, { headers }));
    for (const [name, value] of answer.headers) response.setHeader(name, value);
    response.writeHead(answer.status).end(Buffer.from(await answer.arrayBuffer()));
    return;
  }
  const caller = createCaller(await createContext(headers));
  const account = await caller.account.me();
  if (url.searchParams.has('cases')) await caller.casebook.listCases({});
  if (url.searchParams.has('cookie')) response.setHeader('set-cookie', 'seen=1');
  const { cases } = await caller.lookup.ask({ text: url.searchParams.get('q') ?? '' });
  const told = `${account?.name ?? 'guest'} ${cases.total} ${headers.get('x-forwarded-host') ?? 'nowhere'}`;
  response.setHeader('content-security-policy', `default-src 'self'; script-src 'self' 'nonce-${NONCE}' 'strict-dynamic'; object-src 'none'`);
  response.setHeader('content-type', 'text/html; charset=utf-8');
  response.setHeader('cache-control', 'private, no-store');
  response.write(`<!doctype html><p>${told}</p><script nonce="${NONCE}" src="/a.js"></script>`);
  response.end(`<script nonce="${NONCE}">push("ü", "${NONCE}")</script><script nonce="${NONCE}" id="b">go()</script>`);
}

beforeAll(async () => {
  opened = openTestDatabase();
  await fillDatabase(opened.db, CASES);
  await addPerson(opened.db, 'mod');
  process.env.DATABASE_URL = opened.url;
  door = await import('../../../app/api/trpc/[trpc]/route');
  const front = createFront(handle, { mostBytes: 10_000_000 });
  server = createServer((request, response) => void front(request, response).catch((error: Error) => response.destroy(error)));
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  root = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
});
afterAll(async () => {
  await new Promise((resolve) => server.close(resolve));
  forgetCasebook();
  await getDb().$disconnect();
  await opened.close();
});

const ask = (path: string, headers: Record<string, string> = {}) => fetch(`${root}${path}`, { headers: { 'accept-encoding': 'identity', ...headers } });
const json = (question: unknown) => `/api/trpc/lookup.ask?input=${encodeURIComponent(JSON.stringify(question))}`;
const total = async (path: string) => ((await (await ask(path)).json()) as { result: { data: { cases: { total: number } } } }).result.data.cases.total;
const text = async (path: string, headers: Record<string, string> = {}) => (await ask(path, headers)).text();

describe('a look-up asked again', () => {
  it('is given as it was given before, without being made', async () => {
    const path = json({ text: 'grey screen' });
    const [first, again] = [await ask(path), await ask(path)];
    expect(await again.text()).toBe(await first.text());
    expect(again.headers.get('content-type')).toBe('application/json');
    expect(await text(json({ text: 'garbled' }))).not.toBe(await text(path));
    expect(made).toEqual([path, json({ text: 'garbled' })]);
  });

  it('counts each time what could not be read', async () => {
    forgetUnread();
    for (let i = 0; i < 3; i += 1) await text('/?q=it+frobnicates');
    for (let i = 0; i < 2; i += 1) await text(json({ text: 'sprongles' }));
    expect(made).toHaveLength(2);
    await writeUnread(getDb(), new Date('2026-03-04T05:06:07Z'));
    const counts = await getDb().unreadWord.findMany({ select: { word: true, count: true }, orderBy: { word: 'asc' } });
    expect(counts).toEqual([
      { word: 'frobnicates', count: 3 },
      { word: 'sprongles', count: 2 },
    ]);
  });

  it('is not sent to whom it was sent already, and is smaller for whom can unpack it', async () => {
    const path = json({ text: 'grey screen, garbled' });
    const whole = await ask(path);
    const etag = whole.headers.get('etag') ?? '';
    const known = await ask(path, { 'if-none-match': `"other", ${etag}` });
    expect([known.status, await known.text(), known.headers.get('etag')]).toEqual([304, '', etag]);
    expect((await ask(path, { 'if-none-match': '"other"' })).status).toBe(200);
    const packed = await ask(path, { 'accept-encoding': 'br, gzip' });
    expect(packed.headers.get('content-encoding')).toBe('gzip');
    expect(await packed.text()).toBe(await whole.text());
    expect((await ask(path, { 'accept-encoding': 'gzip;q=0' })).headers.get('content-encoding')).toBeNull();
  });
});

describe('what is counted', () => {
  const event = { month: '2026-03', reason: null };

  it('shows in the next answer after a case was taken back or accepted', async () => {
    const id = CASES[0]?.id ?? '';
    const path = json({ text: 'grey screen' });
    const before = await text('/?q=grey+screen');
    expect([before.slice(15, 30), await total(path)]).toEqual([expect.stringContaining('<p>guest 30 '), 30]);
    await getDb().$transaction((tx) => changeStatus(tx, id, { event: 'withdraw', from: 'accepted', to: 'withdrawn', ...event }));
    await tellFollowers(getDb());
    expect([await total(path), await text('/?q=grey+screen')]).toEqual([29, before.replace('guest 30', 'guest 29')]);
    await getDb().$transaction((tx) => changeStatus(tx, id, { event: 'accept', from: 'withdrawn', to: 'accepted', ...event }));
    await tellFollowers(getDb());
    expect([await total(path), await text('/?q=grey+screen')]).toEqual([30, before]);
  });

  it('is read in the words that hold now', async () => {
    const context = (now: string) => ({ actor: { id: 'mod', role: 'moderator' } as const, now: new Date(now), newId: randomCaseId });
    const read = async () => JSON.parse(await text(json({ text: 'grey screen' }))).result.data.read.findings[0].id as string;
    expect(await read()).toBe('grey-screen');
    const outcome = await changeWords(getDb(), { act: 'merge', kind: 'symptom', from: 'grey-screen', into: 'garbled-picture' }, context('2125-03-04T05:06:07Z'));
    if (outcome.status !== 'done') throw new Error('The words were not merged.');
    await tellFollowers(getDb());
    expect(await read()).toBe('garbled-picture');
    await undoWords(getDb(), outcome.revision, context('2125-03-05T05:06:07Z'));
    await tellFollowers(getDb());
    expect(await read()).toBe('grey-screen');
  });
});

describe('what is not kept', () => {
  it.each([
    ['for a request with a session', '/?q=grey', { cookie: 'second-bench.session_token=abc.def' }],
    ['of a part of a page', '/?q=grey', { rsc: '1' }],
    ['that is refused', json({ text: 7 }), {}],
    ['that calls what hangs on more than the casebook', '/?q=grey&cases=1', {}],
    ['that hands over a cookie', '/?q=grey&cookie=1', {}],
    ['at another address', '/sign-in?q=grey', {}],
  ])('an answer %s', async (_, path, headers) => {
    await text(path);
    made = [];
    await text(path, headers);
    await text(path, headers);
    expect(made).toHaveLength(2);
  });

  it('anything of the request but its address', async () => {
    const path = '/?q=grey+screen+blank';
    expect(await text(path, { 'x-forwarded-host': 'evil.example', cookie: 'colour=green' })).toContain('<p>guest 30 nowhere</p>');
    expect(made).toEqual([path]);
  });
});

describe('a page that is kept', () => {
  it('lets the very scripts run that stand in it, by their hashes instead of a nonce', async () => {
    const answer = await ask('/?q=garbled');
    const html = await answer.text();
    const scripts = ['push("ü", "")', 'go()'];
    for (const script of scripts) expect(html).toContain(`>${script}</script>`);
    expect(html).not.toContain(NONCE);
    // Content Security Policy Level 3, section 2.3.1: a hash is of the text between the tags, in base64.
    const hashes = scripts.map((script) => `'sha256-${createHash('sha256').update(script, 'utf8').digest('base64')}'`);
    expect(answer.headers.get('content-security-policy')).toBe(
      `default-src 'self'; script-src 'self' ${hashes.join(' ')}; object-src 'none'`,
    );
    expect(answer.headers.get('cache-control')).toBe('private, no-cache');
    expect(answer.headers.get('vary')).toMatch(/\bCookie\b/);
  });

  it('can be unpacked to what is sent otherwise', async () => {
    const { request } = await import('node:http');
    const packed = await new Promise<Buffer>((resolve) => {
      request(`${root}/?q=garbled`, { headers: { 'accept-encoding': 'gzip' } }, (response) => {
        const chunks: Buffer[] = [];
        response.on('data', (chunk: Buffer) => chunks.push(chunk)).on('end', () => resolve(Buffer.concat(chunks)));
      }).end();
    });
    expect(gunzipSync(packed).toString()).toBe(await text('/?q=garbled'));
  });
});
