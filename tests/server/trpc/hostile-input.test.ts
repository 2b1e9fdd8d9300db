import { fetchRequestHandler } from '@trpc/server/adapters/fetch';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Casebook, loadCasebook } from '../../../server/casebook/load-casebook';
import { readEnv } from '../../../server/env';
import type { CaseSearch } from '../../../server/search/case-search';
import { openSearch } from '../../../server/search/open-search';
import { appRouter } from '../../../server/trpc/root';
import { openTestDatabase, type TestDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { smallCases } from '../fixtures/small-cases';
import { ownPage } from './test-request';

let opened: TestDatabase;
let search: CaseSearch;
let casebook: Casebook;

beforeAll(async () => {
  opened = openTestDatabase();
  await fillDatabase(opened.db, smallCases(40));
  casebook = await loadCasebook(opened.db);
  search = openSearch(opened.db, readEnv({ DATABASE_URL: opened.url }, '/'));
});
afterAll(async () => {
  await search.close();
  await opened.close();
});

const PROCEDURES = Object.keys(appRouter._def.procedures);

async function ask(path: string, input: string): Promise<{ status: number; body: unknown }> {
  const url = `http://bench.example/api/trpc/${path}?input=${encodeURIComponent(input)}`;
  const response = await fetchRequestHandler({
    endpoint: '/api/trpc',
    req: new Request(url),
    router: appRouter,
    createContext: () => ({ ...ownPage, db: opened.db, casebook: async () => casebook, search: () => search }),
  });
  return { status: response.status, body: await response.json() };
}

const hostileText = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 300 }),
  fc.constantFrom(
    "'; DROP TABLE CaseFile; --",
    '../../etc/passwd',
    '\u0000',
    '\uD800',
    '<script>alert(1)</script>',
    'x'.repeat(5000),
    '__proto__',
    '9'.repeat(400),
  ),
);

/** Objects with the names of real fields, holding anything. */
const hostileInput = fc.oneof(
  fc.jsonValue(),
  fc.record(
    {
      text: fc.oneof(hostileText, fc.jsonValue()),
      device: fc.oneof(hostileText, fc.constant(null)),
      complete: fc.jsonValue(),
      set: fc.oneof(
        fc.jsonValue(),
        fc.array(
          fc.record({
            kind: fc.constantFrom('symptom', 'check', 'fix', 'constructor'),
            id: fc.constantFrom('grey-screen', 'toString', 'replace-crystal'),
            value: fc.constantFrom('present', 'pulsing', 'cured', ''),
          }),
        ),
      ),
      id: hostileText,
      cursor: hostileText,
      take: fc.oneof(fc.double(), fc.integer()),
      limit: fc.double(),
      kinds: fc.jsonValue(),
      symptoms: fc.jsonValue(),
      question: fc.record({ text: hostileText, why: fc.constantFrom('constructor', 'grey-screen') }),
      options: fc.record({ hourValueCents: fc.double(), maxStage: fc.integer(), struck: fc.jsonValue() }, { requiredKeys: [] }),
    },
    { requiredKeys: [] },
  ),
);

describe('every procedure', () => {
  it('answers hostile input with an answer or a refusal, never with a failure of the server', async () => {
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...PROCEDURES), hostileInput, async (path, input) => {
        const { status } = await ask(path, JSON.stringify(input));
        expect(status, `${path} ${JSON.stringify(input)}`).toBeLessThan(500);
      }),
      { numRuns: 400, seed: 11 },
    );
  });

  it.each(['{', '', 'null', '[', '"', '1e999', '{"text":'])('refuses an input that is not JSON as bad: %s', async (input) => {
    for (const path of PROCEDURES) expect((await ask(path, input)).status).toBeLessThan(500);
  });

  it('says which field is wrong, and what to write', async () => {
    const { status, body } = await ask('casebook.getCase', JSON.stringify({ id: 'no' }));
    expect(status).toBe(400);
    expect(body).toMatchObject({ error: { data: { fields: { id: ['A case id is 16 letters and digits 2 to 7.'] } } } });
  });

  it('names the refusal, and gives no stack', async () => {
    const { status, body } = await ask('casebook.getCase', JSON.stringify({ id: 'aaaaaaaaaaaaaaaa' }));
    expect(status).toBe(404);
    expect(body).toMatchObject({ error: { data: { refusal: 'case-not-found' } } });
    expect(JSON.stringify(body)).not.toMatch(/\.ts:|node_modules/);
  });

  it('hides what a bug says', async () => {
    const response = await fetchRequestHandler({
      endpoint: '/api/trpc',
      req: new Request('http://bench.example/api/trpc/casebook.overview'),
      router: appRouter,
      createContext: () => ({ ...ownPage, db: opened.db, casebook: () => Promise.reject(new Error('secret path /var/data')) }),
    });
    expect(response.status).toBe(500);
    expect(await response.text()).not.toContain('secret');
  });
});
