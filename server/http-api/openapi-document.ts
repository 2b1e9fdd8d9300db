import { z } from 'zod';
import { API_LIMIT } from '../accounts/limits';
import { ENDPOINTS, type Endpoint, procedureOf } from './endpoints';
import { parametersOf } from './parameters';

const PROBLEM = { $ref: '#/components/responses/Problem' } as const;

/** The description of the interface, OpenAPI 3.1, made from the schemas of the procedures themselves. */
export function openApiDocument() {
  return {
    openapi: '3.1.1',
    info: {
      title: 'Second Bench casebook',
      version: '1',
      description: `Read-only. Cases are volunteered, not sampled. Intervals hold 90 %. At most ${API_LIMIT.requests} requests in ${API_LIMIT.seconds / 60} minutes from one address are answered.`,
      license: { name: 'CC BY 4.0 (data)', url: 'https://creativecommons.org/licenses/by/4.0/legalcode' },
    },
    servers: [{ url: '/api/v1' }],
    security: [],
    paths: Object.fromEntries(ENDPOINTS.map((endpoint) => [endpoint.path, { get: operation(endpoint) }])),
    components: {
      schemas: {
        ...Object.fromEntries(ENDPOINTS.map((endpoint) => [endpoint.answer, answerSchema(endpoint)])),
        Problem: PROBLEM_SCHEMA,
      },
      responses: {
        Problem: {
          description: 'What went wrong, as problem details (RFC 9457)',
          content: { 'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } } },
        },
      },
    },
  };
}

function operation(endpoint: Endpoint) {
  return {
    operationId: endpoint.procedure.replace('.', '-'),
    summary: endpoint.summary,
    tags: [endpoint.path.split('/')[1] ?? ''],
    parameters: parametersOf(endpoint),
    responses: {
      200: {
        description: endpoint.summary,
        content: { 'application/json': { schema: { $ref: `#/components/schemas/${endpoint.answer}` } } },
      },
      400: PROBLEM,
      404: PROBLEM,
      412: PROBLEM,
      429: PROBLEM,
      500: PROBLEM,
    },
  };
}

/** JSON Schema of an endpoint's answer. Throws where neither the procedure nor the endpoint states one. */
function answerSchema(endpoint: Endpoint) {
  const output = procedureOf(endpoint).output ?? endpoint.output;
  if (!output) throw new Error(`Nothing states what ${endpoint.path} answers.`);
  const { $schema: _, ...schema } = z.toJSONSchema(output, { target: 'draft-2020-12', io: 'output' });
  return schema;
}

const PROBLEM_SCHEMA = {
  type: 'object',
  required: ['type', 'title', 'status', 'detail'],
  properties: {
    type: { type: 'string', format: 'uri-reference' },
    title: { type: 'string' },
    status: { type: 'integer' },
    detail: { type: 'string' },
    code: { type: 'string', description: 'Which refusal it is, for programs.' },
    errors: {
      type: 'array',
      items: {
        type: 'object',
        required: ['parameter', 'detail'],
        properties: { parameter: { type: 'string' }, detail: { type: 'string' } },
      },
    },
  },
};
