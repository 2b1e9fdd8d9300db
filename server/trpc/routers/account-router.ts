import { z } from 'zod';
import { can } from '../../../shared/domain/can/can';
import { AppError } from '../../../shared/errors';
import {
  type AccountOutcome,
  changePasswordSchema,
  deleteAccountSchema,
  resetPasswordSchema,
  resetTokenSchema,
  setRoleSchema,
  signInSchema,
  signUpSchema,
} from '../../../shared/schemas/account';
import { accountData, deleteAccount } from '../../accounts/account-data';
import { addAccount } from '../../accounts/add-account';
import { DEMO_ACCOUNTS } from '../../accounts/demo-accounts';
import { getLimits, takeTurn } from '../../accounts/limits';
import { changePassword, isPasswordOf } from '../../accounts/passwords';
import { findNameBehindReset, makeResetToken, resetPassword } from '../../accounts/reset-link';
import { setRole } from '../../accounts/set-role';
import { signIn, signOut } from '../../accounts/sign-in';
import { deleteSessions, findAccount, listAccounts } from '../../repositories/account-repository';
import { hasEvent } from '../../repositories/event-log-repository';
import { tidyPhotos } from '../../services/photo-tidy';
import type { Context } from '../context';
import { guestProcedure, keeperProcedure, router, signedInProcedure } from '../init';

/** Hands cookies to the browser; over TLS it must never send them without. */
function hand(ctx: Pick<Context, 'setCookie' | 'request'>, cookies: readonly string[]): void {
  for (const cookie of cookies) ctx.setCookie(ctx.request.isSecure ? `${cookie}; Secure` : cookie);
}

export const accountRouter = router({
  /** Name and role of who is signed in; null for nobody. */
  me: guestProcedure.query(async ({ ctx }) => {
    const account = ctx.actor && (await findAccount(ctx.db, ctx.actor.id));
    return account && { name: account.name, role: account.role };
  }),

  /** The accounts that everybody may try; none outside the demo. */
  demoAccounts: guestProcedure.query(async ({ ctx }) => ((await hasEvent(ctx.db, 'seed')) ? DEMO_ACCOUNTS : [])),

  signUp: guestProcedure.input(signUpSchema).mutation(async ({ ctx, input }): Promise<AccountOutcome> => {
    await takeTurn(getLimits().signUpFrom, ctx.request.address);
    await takeTurn(getLimits().signUp, 'all');
    const { cookies, ...outcome } = await addAccount(ctx.db, input);
    hand(ctx, cookies);
    return outcome;
  }),

  signIn: guestProcedure.input(signInSchema).mutation(async ({ ctx, input }): Promise<AccountOutcome> => {
    const { cookies, ...outcome } = await signIn(ctx.db, input, ctx.request.address);
    hand(ctx, cookies);
    return outcome;
  }),

  /** Ends this session; nothing happens where there is none. */
  signOut: guestProcedure.mutation(async ({ ctx }): Promise<AccountOutcome> => {
    hand(ctx, await signOut(ctx.db, ctx.request.headers));
    return { status: 'done' };
  }),

  signOutEverywhere: signedInProcedure.mutation(async ({ ctx }): Promise<AccountOutcome> => {
    await deleteSessions(ctx.db, ctx.actor.id);
    hand(ctx, await signOut(ctx.db, ctx.request.headers));
    return { status: 'done' };
  }),

  /** Ends every session and starts a new one here. */
  changePassword: signedInProcedure.input(changePasswordSchema).mutation(async ({ ctx, input }): Promise<AccountOutcome> => {
    const outcome = await changePassword(ctx.db, ctx.actor.id, input, new Date());
    const account = await findAccount(ctx.db, ctx.actor.id);
    if (outcome.status === 'done' && account !== null) {
      const again = await signIn(ctx.db, { name: account.name, password: input.password }, ctx.request.address);
      hand(ctx, again.cookies);
    }
    return outcome;
  }),

  /** Name of the account that a reset link is for; null where the link does not work. */
  behindReset: guestProcedure.input(z.object({ token: z.string().max(200) })).query(async ({ ctx, input }) => {
    await takeTurn(getLimits().resetFrom, ctx.request.address);
    const token = resetTokenSchema.safeParse(input.token);
    return token.success ? findNameBehindReset(ctx.db, token.data, new Date()) : null;
  }),

  resetPassword: guestProcedure.input(resetPasswordSchema).mutation(async ({ ctx, input }): Promise<AccountOutcome> => {
    await takeTurn(getLimits().resetFrom, ctx.request.address);
    return resetPassword(ctx.db, input, new Date());
  }),

  /** Everything that the site holds about the account. */
  download: signedInProcedure.query(({ ctx }) => accountData(ctx, ctx.actor.id)),

  delete: signedInProcedure.input(deleteAccountSchema).mutation(async ({ ctx, input }): Promise<AccountOutcome> => {
    if (!(await isPasswordOf(ctx.db, ctx.actor.id, input.password))) {
      return { status: 'refused', fields: { password: 'This is not your password, so nothing was deleted.' } };
    }
    await tidyPhotos(ctx, ctx.actor.id, () => deleteAccount(ctx.db, ctx.actor.id));
    hand(ctx, await signOut(ctx.db, ctx.request.headers));
    return { status: 'done' };
  }),

  list: keeperProcedure.query(({ ctx }) => listAccounts(ctx.db)),

  setRole: keeperProcedure.input(setRoleSchema).mutation(async ({ ctx, input }) => {
    if (!can(ctx.actor, 'account.set-role', { ownerId: input.accountId })) throw new AppError('not-allowed');
    await setRole(ctx.db, input.accountId, input.role, { by: ctx.actor.id, now: new Date() });
  }),

  /** Signs an account out everywhere. */
  endSessions: keeperProcedure.input(z.object({ accountId: z.string().max(64) })).mutation(async ({ ctx, input }) => {
    if ((await findAccount(ctx.db, input.accountId)) === null) throw new AppError('account-not-found');
    await deleteSessions(ctx.db, input.accountId);
  }),

  /** Makes a one-time link for a new password. @returns the page's address on this site */
  makeResetLink: keeperProcedure.input(z.object({ accountId: z.string().max(64) })).mutation(async ({ ctx, input }) => {
    if ((await findAccount(ctx.db, input.accountId)) === null) throw new AppError('account-not-found');
    return `/reset/${await makeResetToken(ctx.db, input.accountId, new Date())}`;
  }),
});
