import { validate as validateOpenApi } from '@readme/openapi-parser';
import { Ajv2020 } from 'ajv/dist/2020';
import addFormats from 'ajv-formats';
import { describe, expect, it } from 'vitest';
import { loadCasebook } from '../../../server/casebook/load-casebook';
import { answerEndpoint } from '../../../server/http-api/answer-api';
import { ENDPOINTS, procedureOf } from '../../../server/http-api/endpoints';
import { openApiDocument } from '../../../server/http-api/openapi-document';
import { guards } from '../../../server/trpc/init';
import { appRouter } from '../../../server/trpc/root';
import { insertWorkingUnits } from '../../../server/repositories/working-unit-repository';
import { testDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { smallCases } from '../fixtures/small-cases';
import { ownPage } from '../trpc/test-request';

const cases = smallCases(60);
const document = openApiDocument();

async function askOn(records = cases) {
  const { db } = testDatabase();
  await fillDatabase(db, records);
  await insertWorkingUnits(db, [
    {
      id: 'bbbbbbbbbbbbbbbb',
      device: 'quellbrook-8-rev-a',
      month: '2025-03',
      readings: ['4.9', '5', '5.1'].map((volts) => ({ designator: 'U1', pin: '3', state: null, value: Number(volts), unit: 'V' as const })),
    },
  ]);
  let casebook: ReturnType<typeof loadCasebook> | undefined;
  const context = { ...ownPage, db, casebook: () => (casebook ??= loadCasebook(db)) };
  return (path: string) => answerEndpoint(new URL(`http://bench.example/api/v1${path}`), async () => context);
}

const ajv = new Ajv2020({ strict: false, allErrors: true });
addFormats.default(ajv);

function faultsOf(schema: string, body: unknown) {
  const schemas: Record<string, object> = document.components.schemas;
  ajv.validate(schemas[schema] as object, body);
  return ajv.errors ?? [];
}

/** An address that each endpoint answers on the small world. */
const EXAMPLES: Record<string, string> = {
  '/cases': '/cases?device=quellbrook-8&symptom=grey-screen&take=3',
  '/cases/{id}': `/cases/${cases[0]?.id}`,
  '/symptoms/{slug}': '/symptoms/grey-screen?device=ormadic-duo',
  '/devices/{slug}': '/devices/quellbrook-8',
  '/boards/{slug}/readings': '/boards/quellbrook-8-rev-a/readings',
  '/parts/{slug}': '/parts/video-ram',
  '/fixes/{slug}': '/fixes/replace-crystal',
};

describe('the description', () => {
  it('is OpenAPI 3.1', async () => {
    const result = await validateOpenApi(structuredClone(document) as never);
    expect(result).toMatchObject({ valid: true });
    const broken = { ...structuredClone(document), paths: { 'no-slash': {} } };
    expect(await validateOpenApi(broken as never)).toMatchObject({ valid: false });
  });

  it('names only queries that anybody may ask', () => {
    const layers = Object.values(guards).flatMap((guard) => guard._middlewares as unknown[]);
    for (const endpoint of ENDPOINTS) {
      expect(procedureOf(endpoint).type, endpoint.path).toBe('query');
      const { middlewares } = (appRouter._def.procedures as unknown as Record<string, { _def: { middlewares: unknown[] } }>)[
        endpoint.procedure
      ]!._def;
      expect(middlewares.some((layer) => layers.includes(layer)), endpoint.path).toBe(false);
    }
  });
});

describe('answers', () => {
  it('are what the description says, for every endpoint, with cases and with none', async () => {
    for (const ask of [await askOn(), await askOn([])]) {
      for (const endpoint of ENDPOINTS) {
        const response = await ask(EXAMPLES[endpoint.path] ?? endpoint.path);
        if (endpoint.path === '/cases/{id}' && response.status === 404) continue;
        expect(response.status, endpoint.path).toBe(200);
        expect(response.headers.get('content-type')).toBe('application/json');
        expect(faultsOf(endpoint.answer, await response.json()), endpoint.path).toEqual([]);
      }
    }
  });

  it('are the figures of the pages', async () => {
    const ask = await askOn();
    const answer = (await (await ask('/symptoms/grey-screen')).json()) as { share: { count: number; of: number } };
    const grey = cases.filter((c) => c.content.symptoms.some((s) => s.symptom === 'grey-screen' && s.present)).length;
    expect(answer.share).toMatchObject({ count: grey, of: 60 });
  });

  it('would not pass for another', () => {
    expect(faultsOf('Symptom', { id: 'grey-screen' })).not.toEqual([]);
  });
});

describe('errors', () => {
  it.each([
    ['/nowhere', 404, undefined],
    ['/symptoms/gremlins', 404, 'entry-not-found'],
    ['/cases/aaaaaaaaaaaaaaaa', 404, 'case-not-found'],
    ['/cases?device=no-such-machine', 404, 'device-not-found'],
    ['/cases/not-an-id', 400, undefined],
    ['/cases?take=many', 400, undefined],
    ['/cases?take=1000', 400, undefined],
    ['/cases?colour=red', 400, undefined],
    ['/cases/%ff', 400, undefined],
  ])('of %s are problem details (RFC 9457) with status %i', async (path, status, code) => {
    const ask = await askOn();
    const response = await ask(path);
    expect(response.status).toBe(status);
    expect(response.headers.get('content-type')).toBe('application/problem+json');
    const body = (await response.json()) as { status: number; code?: string };
    expect(faultsOf('Problem', body)).toEqual([]);
    expect(body.status).toBe(status);
    expect(body.code).toBe(code);
  });
});
