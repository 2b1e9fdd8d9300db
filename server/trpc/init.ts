import { initTRPC, TRPCError } from '@trpc/server';
import { ZodError, z } from 'zod';
import { isAtLeast, type Role } from '../../shared/domain/can/role';
import { AppError, isAppError } from '../../shared/errors';
import { noteProcedure, noteSource } from '../front/answering';
import { countProcedure } from '../watching/metrics';
import type { Context } from './context';
import { storageFaultOf } from '../storage/storage-fault';
import { isFault, TRPC_CODES } from './error-codes';

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
  const refusal = refusalBehind(result.error) ?? unstored(result.error);
  if (refusal) throw new TRPCError({ code: TRPC_CODES[refusal.code], message: refusal.message, cause: refusal });
  return result;
});

/** The refusal for an error that means that the disk is full or cannot be written; null for any other. */
function unstored({ cause }: TRPCError): AppError | null {
  const fault = storageFaultOf(cause);
  return fault && new AppError(fault, { cause });
}

/** Counts and times every call, and tells no more about it than that. */
const watched = t.middleware(async ({ ctx, path, next }) => {
  const start = performance.now();
  const result = await next();
  noteProcedure(path, { ok: result.ok, isGuest: ctx.actor === null });
  const failed = !result.ok && isFault(result.error.code);
  countProcedure(path, result.ok ? 'ok' : failed ? 'failed' : 'refused', (performance.now() - start) / 1000);
  return result;
});

/** Refuses what changes something unless a page of this site asked for it: a form on another site could ask too. */
const ownPagesOnly = t.middleware(({ ctx, type, next }) => {
  if (type === 'mutation' && !ctx.request.sameOrigin) throw new AppError('other-origin');
  return next();
});

/** Lets pass who is signed in with at least this role; behind it `ctx.actor` is never null. */
const guard = (least: Role) =>
  t.middleware(({ ctx, next }) => {
    if (ctx.actor === null) throw new AppError('sign-in-needed');
    if (!isAtLeast(ctx.actor.role, least)) throw new AppError('not-allowed');
    return next({ ctx: { ...ctx, actor: ctx.actor } });
  });

const withCasebook = t.middleware(async ({ ctx, next }) => {
  const casebook = await ctx.casebook();
  noteSource(casebook.model, async () => (await ctx.casebook()).model);
  return next({ ctx: { ...ctx, casebook } });
});

function refusalBehind({ cause }: TRPCError): AppError | null {
  return isAppError(cause) ? cause : null;
}

export const router = t.router;
export const createCallerFactory = t.createCallerFactory;

/** Open to everybody, signed in or not; the casebook is not loaded. */
export const guestProcedure = t.procedure.use(watched).use(refusals).use(ownPagesOnly);

/** Open to everybody, and given the casebook. */
export const publicProcedure = guestProcedure.use(withCasebook);

const signedIn = guard('reader');
const contributor = guard('contributor');
const moderator = guard('moderator');
const keeper = guard('keeper');

/** The guards by name, for the test that walks the router. */
export const guards = { signedIn, contributor, moderator, keeper };

/** For any account, also one that may only read. `ctx.actor` is set; `ctx.casebook` is the function that loads it. */
export const signedInProcedure = guestProcedure.use(signedIn);
/** For contributors, moderators and keepers. */
export const contributorProcedure = guestProcedure.use(contributor);
/** For moderators and keepers. */
export const moderatorProcedure = guestProcedure.use(moderator);
/** For keepers. */
export const keeperProcedure = guestProcedure.use(keeper);
