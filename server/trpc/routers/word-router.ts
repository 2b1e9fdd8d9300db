import { z } from 'zod';
import { wordChangeSchema } from '../../../shared/schemas/word-edit';
import { tellFollowers } from '../../change-feed/tell-followers';
import { randomCaseId } from '../../ids';
import { changeWords, undoWords, type WordOutcome } from '../../services/words/change-words';
import { wordPage } from '../../services/words/word-page';
import type { Context } from '../context';
import { moderatorProcedure, router } from '../init';

async function told(ctx: Pick<Context, 'db'>, changed: Promise<WordOutcome>): Promise<WordOutcome> {
  const outcome = await changed;
  if (outcome.status === 'done') await tellFollowers(ctx.db);
  return outcome;
}

export const wordRouter = router({
  /** What was changed so far, what contributors propose, and what look-ups could not read. */
  care: moderatorProcedure.query(async ({ ctx }) => wordPage(ctx.db, (await ctx.casebook()).model, new Date())),

  /** Adds, rewords, merges or retires an entry, or changes its synonyms. */
  change: moderatorProcedure
    .input(wordChangeSchema)
    .mutation(({ ctx, input }) =>
      told(ctx, changeWords(ctx.db, input, { actor: ctx.actor, now: new Date(), newId: randomCaseId })),
    ),

  /** Takes a change back. */
  undo: moderatorProcedure
    .input(z.object({ revision: z.int().min(1) }))
    .mutation(({ ctx, input }) =>
      told(ctx, undoWords(ctx.db, input.revision, { actor: ctx.actor, now: new Date(), newId: randomCaseId })),
    ),
});
