import type { TRPC_ERROR_CODE_KEY } from '@trpc/server';
import type { ErrorCode } from '../../shared/errors';

/** How each refusal is answered over HTTP. A `Record` over every code: a new one that is not listed fails the type check. */
export const TRPC_CODES: Record<ErrorCode, TRPC_ERROR_CODE_KEY> = {
  'case-not-found': 'NOT_FOUND',
  'device-not-found': 'NOT_FOUND',
  'entry-not-found': 'NOT_FOUND',
  'casebook-empty': 'PRECONDITION_FAILED',
  'last-keeper': 'CONFLICT',
  'account-not-found': 'NOT_FOUND',
  'submission-not-found': 'NOT_FOUND',
  'draft-not-found': 'NOT_FOUND',
  'move-not-possible': 'CONFLICT',
  'review-not-found': 'NOT_FOUND',
  'report-not-found': 'NOT_FOUND',
  'own-submission': 'FORBIDDEN',
  'looked-at-by-other': 'CONFLICT',
  'changed-meanwhile': 'CONFLICT',
  'bench-full': 'CONFLICT',
  'other-account': 'CONFLICT',
  'sign-in-needed': 'UNAUTHORIZED',
  'not-allowed': 'FORBIDDEN',
  'other-origin': 'FORBIDDEN',
  'too-many-tries': 'TOO_MANY_REQUESTS',
  'too-few-cases': 'BAD_REQUEST',
  'disk-full': 'SERVICE_UNAVAILABLE',
  'disk-read-only': 'SERVICE_UNAVAILABLE',
};

/** Whether an answer means that the site failed, not that whoever asked has to mend something: such calls are logged and counted. */
export const isFault = (code: TRPC_ERROR_CODE_KEY): boolean => code === 'INTERNAL_SERVER_ERROR' || code === 'SERVICE_UNAVAILABLE';
