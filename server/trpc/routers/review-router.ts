import { z } from 'zod';
import { caseIdSchema } from '../../../shared/schemas/case';
import {
  acceptSchema,
  askChangesSchema,
  type DecisionOutcome,
  declineSchema,
  editedSchema,
  mergeSchema,
  queueFilterSchema,
  REVIEW_LIMITS,
  retractSchema,
} from '../../../shared/schemas/review';
import { tellFollowers } from '../../change-feed/tell-followers';
import { acceptCase, acceptEdited, correctCase } from '../../services/review/accept-case';
import { claimCase, findClaim, releaseCase } from '../../services/review/claim-case';
import { nextFree, queuePage } from '../../services/review/list-queue';
import { mergeCase } from '../../services/review/merge-case';
import { reportPage } from '../../services/review/report-case';
import { editForm, reviewItem } from '../../services/review/review-item';
import { leaveAsIs } from '../../services/review/settle-report';
import { restoreCase, retractPublished } from '../../services/review/take-back';
import { askForChanges, declineCase } from '../../services/review/turn-down';
import type { Context } from '../context';
import { moderatorProcedure, router } from '../init';

const byId = z.object({ id: caseIdSchema });
const cursor = z.string().max(40).nullable().default(null);
const settleInput = z.object({ reportId: caseIdSchema, text: z.string().trim().max(REVIEW_LIMITS.text).default('') });

/** Hands on what came of a decision; where it changed what is published, this process's look-ups know at once. */
async function told(ctx: Pick<Context, 'db'>, decided: Promise<DecisionOutcome>): Promise<DecisionOutcome> {
  const outcome = await decided;
  if (outcome.status === 'done') await tellFollowers(ctx.db);
  return outcome;
}

export const reviewRouter = router({
  /** A page of what waits, with counts. */
  queue: moderatorProcedure
    .input(z.object({ filter: queueFilterSchema.prefault({}), cursor }).prefault({}))
    .query(async ({ ctx, input }) =>
      queuePage(ctx.db, (await ctx.casebook()).model, { ...input, actor: ctx.actor, now: new Date() }),
    ),

  /** One case with everything that the machine found about it. */
  item: moderatorProcedure
    .input(byId)
    .query(async ({ ctx, input }) => reviewItem(ctx.db, (await ctx.casebook()).model, { ...input, actor: ctx.actor, now: new Date() })),

  /** The form to change a case in. */
  editForm: moderatorProcedure.input(byId).query(({ ctx, input }) => {
    let keys = 0;
    return editForm(ctx.db, input.id, () => `k${keys++}`);
  }),

  /** The next case to look at, after the one named; null where none is free. */
  next: moderatorProcedure
    .input(z.object({ filter: queueFilterSchema.prefault({}), after: caseIdSchema.nullable().default(null) }))
    .query(({ ctx, input: { filter, after } }) =>
      nextFree(ctx.db, { actor: ctx.actor, filter, afterId: after, now: new Date() }),
    ),

  /** Who looks at a waiting case. */
  claimOf: moderatorProcedure
    .input(byId)
    .query(({ ctx, input }) => findClaim(ctx.db, { actor: ctx.actor, id: input.id, now: new Date() })),

  /** Takes a waiting case to look at, or renews that; says who has it then. */
  claim: moderatorProcedure
    .input(byId)
    .mutation(({ ctx, input }) => claimCase(ctx.db, { actor: ctx.actor, id: input.id, now: new Date() })),

  /** Gives a case back to the queue. */
  release: moderatorProcedure.input(byId).mutation(({ ctx, input }) => releaseCase(ctx.db, { actor: ctx.actor, id: input.id })),

  accept: moderatorProcedure.input(acceptSchema).mutation(async ({ ctx, input }) => {
    const { model } = await ctx.casebook();
    return told(ctx, acceptCase(ctx.db, model, { ...input, actor: ctx.actor, now: new Date() }));
  }),

  /** Publishes a case with the moderator's own changes. */
  acceptEdited: moderatorProcedure.input(editedSchema).mutation(async ({ ctx, input }) => {
    const { model } = await ctx.casebook();
    return told(ctx, acceptEdited(ctx.db, model, { ...input, actor: ctx.actor, now: new Date() }));
  }),

  /** Gives a published case a new revision. */
  correct: moderatorProcedure.input(editedSchema).mutation(async ({ ctx, input }) => {
    const { model } = await ctx.casebook();
    return told(ctx, correctCase(ctx.db, model, { ...input, actor: ctx.actor, now: new Date() }));
  }),

  askForChanges: moderatorProcedure
    .input(askChangesSchema)
    .mutation(({ ctx, input }) => askForChanges(ctx.db, { ...input, actor: ctx.actor, now: new Date() })),

  decline: moderatorProcedure
    .input(declineSchema)
    .mutation(({ ctx, input }) => declineCase(ctx.db, { ...input, actor: ctx.actor, now: new Date() })),

  /** Takes a waiting case as a second report of a published one. */
  merge: moderatorProcedure
    .input(mergeSchema)
    .mutation(({ ctx, input }) => told(ctx, mergeCase(ctx.db, { ...input, actor: ctx.actor, now: new Date() }))),

  /** Takes a published case back. */
  retract: moderatorProcedure
    .input(retractSchema)
    .mutation(({ ctx, input }) => told(ctx, retractPublished(ctx.db, { ...input, actor: ctx.actor, now: new Date() }))),

  /** Undoes a decision. */
  restore: moderatorProcedure.input(acceptSchema).mutation(async ({ ctx, input }) => {
    const { model } = await ctx.casebook();
    return told(ctx, restoreCase(ctx.db, model, { ...input, actor: ctx.actor, now: new Date() }));
  }),

  /** A page of the open reports about published cases. */
  reports: moderatorProcedure
    .input(z.object({ cursor }).prefault({}))
    .query(async ({ ctx, input }) => reportPage(ctx.db, (await ctx.casebook()).model, input.cursor)),

  /** Leaves a published case as it is, in spite of a report. */
  leaveAsIs: moderatorProcedure
    .input(settleInput)
    .mutation(({ ctx, input }) => leaveAsIs(ctx.db, { ...input, actor: ctx.actor, now: new Date() })),
});
