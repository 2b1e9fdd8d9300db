import { z } from 'zod';
import { benchSyncSchema } from '../../../shared/schemas/bench';
import { AppError } from '../../../shared/errors';
import { slugSchema } from '../../../shared/schemas/terms';
import { takeTurn } from '../../accounts/limits';
import { benchSnapshot, benchWords } from '../../services/bench-snapshot';
import { getSubmitLimits } from '../../services/submit-limits';
import { syncBench } from '../../services/sync-bench';
import { knownDevice } from '../known-device';
import { publicProcedure, router, signedInProcedure } from '../init';

/** Name of what the browser has already; null for nothing. */
const have = z.string().max(64).nullable();
const syncInput = benchSyncSchema.extend({
  /** Account whose logs the browser holds; null where they were never sent. */
  account: z.string().max(64).nullable(),
});

export const benchRouter = router({
  /** Vocabulary and catalogue; `words` is null where the browser has them. */
  words: publicProcedure.input(z.object({ have })).query(async ({ ctx, input }) => {
    await takeTurn(getSubmitLimits().readFrom, ctx.request.address);
    const { version, words } = benchWords(ctx.casebook.model);
    return { version, words: version === input.have ? null : words, demo: ctx.casebook.demo };
  }),

  /** What answers for one device away from the network; `snapshot` is null where the browser has it. */
  snapshot: publicProcedure.input(z.object({ device: slugSchema, have })).query(async ({ ctx, input }) => {
    await takeTurn(getSubmitLimits().readFrom, ctx.request.address);
    knownDevice(ctx.casebook.model, input.device);
    const { version, snapshot } = await benchSnapshot(ctx.db, ctx.casebook.model, input.device);
    return { version, snapshot: version === input.have ? null : snapshot };
  }),

  /** Takes in a browser's bench logs and answers with what it has not seen. */
  sync: signedInProcedure.input(syncInput).mutation(async ({ ctx, input: { account, ...input } }) => {
    await takeTurn(getSubmitLimits().save, ctx.actor.id);
    if (account !== null && account !== ctx.actor.id) throw new AppError('other-account');
    return { account: ctx.actor.id, ...(await syncBench(ctx.db, ctx.actor.id, input)) };
  }),
});
