import { STATUS_CODES } from 'node:http';

type ProblemDetails = {
  /** What is wrong this time, for whoever reads it. */
  detail: string;
  /** The refusal's code, for programs; null for what has none. */
  code?: string | null;
  /** What is wrong with which parameter. */
  errors?: { parameter: string; detail: string }[];
};

/**
 * An error as RFC 9457 wants it. The type is "about:blank", so that the title is the status in words; what tells errors of one
 * status apart is the member `code`.
 */
export function problem(status: number, { detail, code = null, errors }: ProblemDetails, headers: HeadersInit = {}): Response {
  const body = {
    type: 'about:blank',
    title: STATUS_CODES[status] ?? 'Error',
    status,
    detail,
    ...(code === null ? {} : { code }),
    ...(errors ? { errors } : {}),
  };
  const answer = new Response(JSON.stringify(body), { status, headers });
  answer.headers.set('content-type', 'application/problem+json');
  answer.headers.set('access-control-allow-origin', '*');
  answer.headers.set('cache-control', 'no-store');
  return answer;
}
