import { initTRPC, TRPCError } from '@trpc/server';
import { ZodError, z } from 'zod';
import { type AppError, isAppError } from '../../shared/errors';
import type { Context } from './context';
import { TRPC_CODES } from './error-codes';

const HIDDEN = 'Something went wrong on our side. It was logged; please try again.';

const t = initTRPC.context<Context>().create({
  isDev: false,
  errorFormatter: ({ shape, error }) => {
    const refusal = refusalBehind(error);
    const invalid = error.code === 'BAD_REQUEST' && error.cause instanceof ZodError ? error.cause : null;
    const isBug = error.code === 'INTERNAL_SERVER_ERROR' && refusal === null;
    return {
      ...shape,
      message: isBug ? HIDDEN : invalid ? z.prettifyError(invalid) : shape.message,
      data: {
        ...shape.data,
        /** Which refusal it is, for the page to act on. */
        refusal: refusal?.code ?? null,
        /** What is wrong with which field of the input. */
        fields: invalid ? z.flattenError(invalid).fieldErrors : null,
      },
    };
  },
});

/** Turns a refusal into the answer that its code stands for; everything else passes unchanged. */
const refusals = t.middleware(async ({ next }) => {
  const result = await next();
  if (result.ok) return result;
  const refusal = refusalBehind(result.error);
  if (refusal) throw new TRPCError({ code: TRPC_CODES[refusal.code], message: refusal.message, cause: refusal });
  return result;
});

const withCasebook = t.middleware(async ({ ctx, next }) => next({ ctx: { ...ctx, casebook: await ctx.casebook() } }));

function refusalBehind({ cause }: TRPCError): AppError | null {
  return isAppError(cause) ? cause : null;
}

export const router = t.router;
export const createCallerFactory = t.createCallerFactory;

/** Open to everybody, and given the casebook. */
export const publicProcedure = t.procedure.use(refusals).use(withCasebook);
