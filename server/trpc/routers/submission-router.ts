import { z } from 'zod';
import { findingLabel, findingValueLabel } from '../../../shared/domain/casebook/vocabulary-words';
import { can } from '../../../shared/domain/can/can';
import { caseRarity } from '../../../shared/domain/submission/case-rarity';
import { AppError } from '../../../shared/errors';
import { caseIdSchema, monthSchema } from '../../../shared/schemas/case';
import { slugSchema } from '../../../shared/schemas/terms';
import { draftDocumentSchema, SUBMISSION_LIMITS } from '../../../shared/schemas/submission';
import { takeTurn } from '../../accounts/limits';
import { randomCaseId, randomKey } from '../../ids';
import { deleteDraft } from '../../repositories/submission-drafts';
import { resubmitCase, submitCase } from '../../services/submit-case';
import { cutLink, removeCase, startChanges, withdrawCase } from '../../services/submit-changes';
import { openDraft, saveDraft } from '../../services/submit-draft';
import { tidyPhotos } from '../../services/photo-tidy';
import { getSubmitLimits } from '../../services/submit-limits';
import { listMine } from '../../services/submit-list';
import type { Context } from '../context';
import { contributorProcedure, guestProcedure, publicProcedure, router, signedInProcedure } from '../init';

const byId = z.object({ id: caseIdSchema });
const ownWords = z.object({
  text: z.string().max(SUBMISSION_LIMITS.own, `Keep this under ${SUBMISSION_LIMITS.own + 1} characters.`),
});
const saveInput = z.object({ id: caseIdSchema, isNew: z.boolean(), document: draftDocumentSchema });
const submitInput = z.object({
  draftId: caseIdSchema.nullable(),
  document: draftDocumentSchema,
  /** No person sees this field: whoever fills it in is a program. */
  website: z.string().max(0, 'Leave this field empty.').default(''),
});

/** One try at posting, by account and by address. */
async function takeSubmitTurn(ctx: Pick<Context, 'request'> & { actor: { id: string } }): Promise<void> {
  await takeTurn(getSubmitLimits().submit, ctx.actor.id);
  await takeTurn(getSubmitLimits().submitFrom, ctx.request.address);
}

/** One change of something posted. */
const takeChangeTurn = (actor: { id: string }) => takeTurn(getSubmitLimits().change, actor.id);

export const submissionRouter = router({
  /** Whether who asks is signed in, and may post. */
  standing: guestProcedure.query(({ ctx }) => ({ signedIn: ctx.actor !== null, mayPost: can(ctx.actor, 'submission.post') })),

  /** Reads words into findings, with what they are called; the same reader as the look-up's. */
  readWords: publicProcedure.input(ownWords).query(async ({ ctx, input }) => {
    await takeTurn(getSubmitLimits().readFrom, ctx.request.address);
    const { words, read } = ctx.casebook.model;
    const { findings, unread, ambiguous, device } = read(input.text);
    return {
      findings: findings.map((f) => ({ ...f, label: findingLabel(words, f), valueLabel: findingValueLabel(words, f) })),
      ambiguous: ambiguous.map(({ text, choices }) => ({
        text,
        choices: choices.map((f) => ({ ...f, label: findingLabel(words, f), valueLabel: findingValueLabel(words, f) })),
      })),
      unread: unread.map(({ text }) => text),
      device,
    };
  }),

  /** Whether device and month single a case out among the published ones, and what would hide it. */
  rarity: publicProcedure
    .input(z.object({ device: slugSchema, month: monthSchema }))
    .query(({ ctx, input }) => caseRarity(ctx.casebook.model, input)),

  /** Stores a form as it stands, for its owner alone. */
  saveDraft: contributorProcedure.input(saveInput).mutation(async ({ ctx, input }) => {
    await takeTurn(getSubmitLimits().save, ctx.actor.id);
    const { model } = await ctx.casebook();
    return saveDraft(ctx.db, model, { ...input, ownerId: ctx.actor.id, now: new Date() });
  }),

  /** A draft as it was left. */
  getDraft: contributorProcedure.input(byId).query(async ({ ctx, input }) => {
    const { model } = await ctx.casebook();
    const draft = await openDraft(ctx.db, model.words.aliases, ctx.actor.id, input.id);
    if (draft === null) throw new AppError('draft-not-found');
    return draft;
  }),

  /** Removes a draft for good; one that is not there is as good as removed. */
  discardDraft: signedInProcedure.input(byId).mutation(async ({ ctx, input }) => {
    await tidyPhotos(ctx, ctx.actor.id, () => deleteDraft(ctx.db, ctx.actor.id, input.id));
  }),

  /** Drafts and submissions of who asks. */
  listMine: signedInProcedure.query(async ({ ctx }) => listMine(ctx.db, (await ctx.casebook()).model, ctx.actor)),

  /** Sends a new case to review. */
  submit: contributorProcedure.input(submitInput).mutation(async ({ ctx, input }) => {
    await takeSubmitTurn(ctx);
    const { model } = await ctx.casebook();
    const { draftId, document } = input;
    const now = new Date();
    return tidyPhotos(ctx, ctx.actor.id, () =>
      submitCase(ctx.db, model, { actor: ctx.actor, draftId, document, now, newId: randomCaseId, newKey: randomKey }),
    );
  }),

  /** Sends a case to review again, after changes were asked for. */
  resubmit: contributorProcedure.input(submitInput.extend({ id: caseIdSchema })).mutation(async ({ ctx, input }) => {
    await takeSubmitTurn(ctx);
    const { model } = await ctx.casebook();
    const { id, draftId, document } = input;
    const now = new Date();
    return tidyPhotos(ctx, ctx.actor.id, () =>
      resubmitCase(ctx.db, model, id, { actor: ctx.actor, draftId, document, now, newId: randomCaseId, newKey: randomKey }),
    );
  }),

  /** Opens a case for the changes that were asked for; returns the draft to go on with. */
  startChanges: contributorProcedure.input(byId).mutation(async ({ ctx, input }) => {
    await takeChangeTurn(ctx.actor);
    return { draftId: await startChanges(ctx, { actor: ctx.actor, id: input.id, now: new Date(), newId: randomCaseId }) };
  }),

  /** Takes a case back before it is published. */
  withdraw: signedInProcedure.input(byId).mutation(async ({ ctx, input }) => {
    await takeChangeTurn(ctx.actor);
    const change = { actor: ctx.actor, id: input.id, now: new Date() };
    return { status: await tidyPhotos(ctx, ctx.actor.id, () => withdrawCase(ctx.db, change)) };
  }),

  /** Removes a case that was withdrawn or declined, for good. */
  remove: signedInProcedure.input(byId).mutation(async ({ ctx, input }) => {
    await takeChangeTurn(ctx.actor);
    await tidyPhotos(ctx, ctx.actor.id, () => removeCase(ctx.db, ctx.actor, input.id));
  }),

  /** Cuts the link between a case and its contributor, for good; returns the key to report with later. */
  cutLink: signedInProcedure.input(byId).mutation(async ({ ctx, input }) => {
    await takeChangeTurn(ctx.actor);
    return tidyPhotos(ctx, ctx.actor.id, () => cutLink(ctx.db, ctx.actor, input.id, randomKey));
  }),
});
