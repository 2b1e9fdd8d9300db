import { createTRPCClient, httpBatchLink } from '@trpc/client';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { forgetCasebook, getCasebook } from '../../../server/casebook/current-casebook';
import { getDb } from '../../../server/db';
import type { AppRouter } from '../../../server/trpc/root';
import { retractCase } from '../../../shared/domain/casebook/casebook-model';
import { openTestDatabase, type TestDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { smallCases } from '../fixtures/small-cases';

type Handler = (request: Request) => Response | Promise<Response>;

const DOOR = 'http://bench.example/api/trpc';
let opened: TestDatabase;
let door: { GET: Handler; POST: Handler };

beforeAll(async () => {
  opened = openTestDatabase();
  await fillDatabase(opened.db, smallCases(30));
  process.env.DATABASE_URL = opened.url;
  door = await import('../../../app/api/trpc/[trpc]/route');
});
afterAll(async () => {
  forgetCasebook();
  await getDb().$disconnect();
  await opened.close();
});

/** A browser's client, whose requests go straight to the door. */
function client() {
  const fetch = async (url: RequestInfo | URL | string, init?: RequestInit) => {
    const body = typeof init?.body === 'string' ? init.body : '';
    const headers = new Headers(init?.headers);
    headers.set('content-length', String(body.length));
    return door.POST(new Request(String(url), { ...init, headers }));
  };
  return createTRPCClient<AppRouter>({ links: [httpBatchLink({ url: DOOR, methodOverride: 'POST', fetch })] });
}

describe('the HTTP door', () => {
  it('answers the client that the pages use, however long the words are', async () => {
    expect((await client().casebook.overview.query()).cases).toBe(30);
    const result = await client().lookup.ask.query({ text: `grey screen, ${'灰'.repeat(1900)}` });
    expect(result.read.findings.map((f) => f.id)).toContain('grey-screen');
  });

  it('tells the client which refusal it is', async () => {
    const asked = client().casebook.getCase.query({ id: 'aaaaaaaaaaaaaaaa' });
    await expect(asked).rejects.toMatchObject({ data: { refusal: 'case-not-found', httpStatus: 404 } });
  });

  it('refuses a request that is too long, one that does not say how long it is, and a batch of too many', async () => {
    const post = (headers: Record<string, string>) =>
      door.POST(new Request(`${DOOR}/casebook.overview`, { method: 'POST', headers, body: '{}' }));
    expect((await post({ 'content-length': '300000' })).status).toBe(413);
    expect((await post({})).status).toBe(411);
    const many = Array.from({ length: 30 }, () => 'casebook.overview').join(',');
    const batch = await door.GET(new Request(`${DOOR}/${many}?batch=1&input={}`));
    expect(batch.status).toBe(400);
  });

  it('gives a look-up asked again as it was given before, until what is counted changes', async () => {
    const ask = async (question: unknown) => door.GET(new Request(`${DOOR}/lookup.ask?input=${encodeURIComponent(JSON.stringify(question))}`));
    const first = await ask({ text: 'grey screen' });
    const before = await first.text();
    const again = await ask({ text: 'grey screen' });
    expect(await again.text()).toBe(before);
    expect([again.status, again.headers.get('content-type')]).toEqual([200, first.headers.get('content-type')]);
    expect(await (await ask({ text: 'garbled' })).text()).not.toBe(before);
    const { model } = await getCasebook(getDb());
    retractCase(model, smallCases(30)[0]?.id ?? '');
    const after = JSON.parse(await (await ask({ text: 'grey screen' })).text());
    expect(after.result.data.cases.total).toBe(29);
    expect([(await ask({ text: 7 })).status, (await ask({ text: 7 })).status]).toEqual([400, 400]);
  });
});
