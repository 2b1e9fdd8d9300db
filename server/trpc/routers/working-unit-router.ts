import { z } from 'zod';
import { caseIdSchema, readingSchema } from '../../../shared/schemas/case';
import { slugSchema } from '../../../shared/schemas/terms';
import { takeTurn } from '../../accounts/limits';
import { randomCaseId } from '../../ids';
import { getSubmitLimits } from '../../services/submit-limits';
import {
  decideWorkingUnit,
  ownWorkingUnits,
  submitWorkingUnit,
  waitingWorkingUnits,
  withdrawWorkingUnit,
} from '../../services/working-units';
import { contributorProcedure, moderatorProcedure, router, signedInProcedure } from '../init';

const byId = z.object({ id: caseIdSchema });
const submitInput = z.object({ device: slugSchema, readings: z.array(readingSchema).min(1, 'Read at least one pin.').max(400) });

export const workingUnitRouter = router({
  /** Sends the readings of a working unit to review. */
  submit: contributorProcedure.input(submitInput).mutation(async ({ ctx, input }) => {
    await takeTurn(getSubmitLimits().submit, ctx.actor.id);
    await takeTurn(getSubmitLimits().submitFrom, ctx.request.address);
    const { model } = await ctx.casebook();
    return submitWorkingUnit(ctx.db, model, { ...input, actor: ctx.actor, now: new Date(), newId: randomCaseId });
  }),

  /** Readings that who asks has contributed. */
  listMine: signedInProcedure.query(({ ctx }) => ownWorkingUnits(ctx.db, ctx.actor.id)),

  /** Takes readings back before they are published. */
  withdraw: signedInProcedure.input(byId).mutation(async ({ ctx, input }) => {
    await takeTurn(getSubmitLimits().change, ctx.actor.id);
    await withdrawWorkingUnit(ctx.db, ctx.actor, input.id);
  }),

  /** Readings that wait for a decision. */
  waiting: moderatorProcedure.query(({ ctx }) => waitingWorkingUnits(ctx.db, ctx.actor)),

  /** Publishes or declines readings that wait. */
  decide: moderatorProcedure.input(byId.extend({ accept: z.boolean() })).mutation(async ({ ctx, input }) => {
    await takeTurn(getSubmitLimits().change, ctx.actor.id);
    await decideWorkingUnit(ctx.db, ctx.actor, { ...input, now: new Date() });
  }),
});
