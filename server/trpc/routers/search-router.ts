import { suggestPages } from '../../../shared/domain/search/suggest-pages';
import { type SuggestedPages, suggestPagesSchema } from '../../../shared/schemas/search';
import { publicProcedure, router } from '../init';

export const searchRouter = router({
  /** Pages that what was typed so far may mean: symptoms, devices, parts, fixes, cases. */
  suggest: publicProcedure.input(suggestPagesSchema).query(({ ctx, input }): SuggestedPages => ({
    groups: suggestPages(ctx.casebook.model, input.text, input.perKind),
  })),
});
