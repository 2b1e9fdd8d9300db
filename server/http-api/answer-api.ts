import { TRPCError } from '@trpc/server';
import { getHTTPStatusCodeFromError } from '@trpc/server/http';
import { ZodError } from 'zod';
import { isAppError } from '../../shared/errors';
import { getLimits, takeTurn } from '../accounts/limits';
import { getEnv } from '../env';
import { createContext } from '../trpc/context';
import { logError } from '../trpc/log-error';
import { requestFacts } from '../trpc/request-facts';
import { createCaller } from '../trpc/root';
import type { Context } from '../trpc/context';
import { ENDPOINTS, type Endpoint } from './endpoints';
import { openApiDocument } from './openapi-document';
import { type Parameter, parameterValue, parametersOf } from './parameters';
import { problem } from './problem';

const ROOT = '/api/v1';
const HIDDEN = 'Something went wrong on our side. It was logged; please try again.';

/** Any page of any site may read; an answer stays good for a minute. */
const OPEN = { 'access-control-allow-origin': '*', 'cache-control': 'public, max-age=60' };

/** Answers a request of a program: an endpoint's answer, the description, or problem details. Never throws. */
export async function answerApi(request: Request): Promise<Response> {
  if (request.method !== 'GET') return problem(405, { detail: 'This interface only reads: use GET.' }, { allow: 'GET' });
  try {
    await takeTurn(getLimits().apiFrom, requestFacts(request.headers, getEnv()).address);
  } catch (error) {
    return refusal(error);
  }
  // Whoever is signed in in this browser is nobody here: answers are the same for all.
  const headers = new Headers(request.headers);
  headers.delete('cookie');
  return answerEndpoint(new URL(request.url), () => createContext(headers));
}

/**
 * The same without limits, on a context that is given.
 *
 * @param url whose path begins with /api/v1.
 */
export async function answerEndpoint(url: URL, context: () => Promise<Context>): Promise<Response> {
  const path = url.pathname.slice(ROOT.length).replace(/\/$/, '');
  if (path === '/openapi.json') return Response.json(openApiDocument(), { headers: OPEN });
  const found = findEndpoint(path);
  if (!found) return problem(404, { detail: `There is nothing here; ${ROOT}/openapi.json says what there is.` });
  const parameters = parametersOf(found.endpoint);
  const unknown = [...url.searchParams.keys()].filter((name) => !parameters.some((p) => p.in === 'query' && p.name === name));
  if (unknown.length > 0) {
    const errors = unknown.map((name) => ({ parameter: name, detail: 'There is no such parameter here.' }));
    return problem(400, { detail: 'The request has parameters that mean nothing here.', errors });
  }
  try {
    const answer = await call(await context(), found.endpoint, inputOf(parameters, found.values, url.searchParams));
    return Response.json(answer, { headers: OPEN });
  } catch (error) {
    return refusal(error);
  }
}

/** The endpoint of a path, and what its braces stand for there. */
function findEndpoint(path: string): { endpoint: Endpoint; values: Map<string, string> } | null {
  const parts = path.split('/');
  for (const endpoint of ENDPOINTS) {
    const pattern = endpoint.path.split('/');
    const values = new Map<string, string>();
    const matches = pattern.every((piece, at) => {
      const part = parts[at];
      if (!piece.startsWith('{')) return piece === part;
      if (part === undefined) return false;
      values.set(piece.slice(1, -1), decoded(part));
      return true;
    });
    if (matches && pattern.length === parts.length) return { endpoint, values };
  }
  return null;
}

/** A piece of the address as it was meant; as it stands where it is not well written. */
function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

function inputOf(parameters: readonly Parameter[], inPath: ReadonlyMap<string, string>, query: URLSearchParams) {
  const entries = parameters.flatMap((parameter) => {
    const text = parameter.in === 'path' ? inPath.get(parameter.name) : query.get(parameter.name);
    return text === null || text === undefined ? [] : [[parameter.name, parameterValue(parameter, text)] as const];
  });
  return Object.fromEntries(entries);
}

async function call(context: Context, { procedure }: Endpoint, input: object): Promise<unknown> {
  const [router = '', name = ''] = procedure.split('.');
  const caller = createCaller(context, { onError: logError }) as unknown as Record<string, Record<string, (input: object) => unknown>>;
  return caller[router]?.[name]?.(input);
}

function refusal(error: unknown): Response {
  if (isAppError(error)) return problem(error.code === 'too-many-tries' ? 429 : 400, { detail: error.message, code: error.code });
  if (!(error instanceof TRPCError)) {
    console.error('A request of a program failed.', error);
    return problem(500, { detail: HIDDEN });
  }
  const status = getHTTPStatusCodeFromError(error);
  if (isAppError(error.cause)) return problem(status, { detail: error.cause.message, code: error.cause.code });
  if (error.code === 'BAD_REQUEST' && error.cause instanceof ZodError) {
    const errors = error.cause.issues.map((issue) => ({ parameter: issue.path.join('.'), detail: issue.message }));
    return problem(400, { detail: 'The request has parameters that cannot be right.', errors });
  }
  return problem(status, { detail: status === 500 ? HIDDEN : error.message });
}
