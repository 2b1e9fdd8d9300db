import { reportSchema } from '../../../shared/schemas/review';
import { takeTurn } from '../../accounts/limits';
import { randomCaseId } from '../../ids';
import { reportCase } from '../../services/review/report-case';
import { getSubmitLimits } from '../../services/submit-limits';
import { publicProcedure, router } from '../init';

export const reportRouter = router({
  /** Tells the moderators what is wrong with a published case; open to everybody, within limits. */
  send: publicProcedure.input(reportSchema).mutation(async ({ ctx, input }) => {
    const limits = getSubmitLimits();
    if (ctx.actor === null) await takeTurn(limits.reportFrom, ctx.request.address);
    else await takeTurn(limits.report, ctx.actor.id);
    await takeTurn(limits.reports, 'all');
    return reportCase(ctx.db, ctx.casebook.model, { ...input, now: new Date(), newId: randomCaseId });
  }),
});
