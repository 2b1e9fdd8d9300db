import { z } from 'zod';
import { afterKeySchema, afterReportSchema } from '../../../shared/schemas/afterwards';
import { caseIdSchema } from '../../../shared/schemas/case';
import { takeTurn } from '../../accounts/limits';
import { tellFollowers } from '../../change-feed/tell-followers';
import { randomCaseId, randomKey } from '../../ids';
import { decideReport, getReportsOfCase, listForReview, sendByKey, sendReport } from '../../services/after-report';
import { getSubmitLimits } from '../../services/submit-limits';
import { guestProcedure, moderatorProcedure, router, signedInProcedure } from '../init';

const now = () => new Date();

export const afterReportRouter = router({
  /** Reports that a repair held, or that the fault came back. */
  send: signedInProcedure.input(afterReportSchema).mutation(async ({ ctx, input }) => {
    await takeTurn(getSubmitLimits().report, ctx.actor.id);
    return sendReport(ctx.db, { ...input, actor: ctx.actor, now: now(), newId: randomCaseId });
  }),

  /** The same with the key of the case, without an account. */
  sendByKey: guestProcedure.input(afterReportSchema.extend({ key: afterKeySchema })).mutation(async ({ ctx, input }) => {
    await takeTurn(getSubmitLimits().reportFrom, ctx.request.address);
    await takeTurn(getSubmitLimits().reports, 'all');
    return sendByKey(ctx.db, { ...input, now: now(), newId: randomCaseId, newKey: randomKey });
  }),

  /** What was reported about a published case and accepted. */
  ofCase: guestProcedure.input(z.object({ id: caseIdSchema })).query(({ ctx, input }) => getReportsOfCase(ctx.db, input.id)),

  /** What waits for a moderator. */
  list: moderatorProcedure.query(({ ctx }) => listForReview(ctx.db)),

  /** Accepts or declines a report; proof and statistics follow one that is accepted. */
  decide: moderatorProcedure.input(z.object({ id: caseIdSchema, accept: z.boolean() })).mutation(async ({ ctx, input }) => {
    await decideReport(ctx.db, { ...input, actor: ctx.actor, now: now() });
    await tellFollowers(ctx.db);
  }),
});
