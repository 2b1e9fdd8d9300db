import { readQuestion } from '../../../shared/domain/look-up/read-question';
import { similarCases } from '../../../shared/domain/look-up/similar-cases';
import { suggestPages } from '../../../shared/domain/search/suggest-pages';
import {
  type SearchAnswer,
  type SearchQuery,
  type SuggestedPages,
  searchQuerySchema,
  suggestPagesSchema,
} from '../../../shared/schemas/search';
import type { SimilarCase } from '../../../shared/schemas/look-up';
import { questionSchema } from '../../../shared/schemas/question';
import { showHits } from '../../search/show-hits';
import { findExcerpts } from '../../services/answer-question';
import type { Context } from '../context';
import type { Casebook } from '../../casebook/load-casebook';
import { publicProcedure, router } from '../init';
import { knownDevice } from '../known-device';

export const searchRouter = router({
  /** Published cases by words and filters, with how many have each value of the filters. */
  cases: publicProcedure.input(searchQuerySchema.prefault({})).query(({ ctx, input }) => findCases(ctx, input)),

  /** The cases most like the unit of a look-up, each with why it is there. */
  similar: publicProcedure.input(questionSchema).query(async ({ ctx, input }): Promise<SimilarCase[]> => {
    const { model } = ctx.casebook;
    knownDevice(model, input.device);
    const similar = similarCases(model, readQuestion(model, input), SIMILAR_SHOWN);
    const excerpts = await findExcerpts(ctx.db, similar.map(({ id }) => id));
    return similar.map((entry) => ({ ...entry, excerpt: excerpts.get(entry.id) ?? '' }));
  }),

  /** Pages that what was typed so far may mean: symptoms, devices, parts, fixes, cases. */
  suggest: publicProcedure.input(suggestPagesSchema).query(async ({ ctx, input }): Promise<SuggestedPages> => {
    const groups = suggestPages(ctx.casebook.model, input.text, input.perKind);
    if (input.text.trim().length < LEAST_TYPED) return { groups };
    const query = searchQuerySchema.parse({ text: input.text, take: input.perKind, facets: false });
    const { hits, matched } = await findCases(ctx, query);
    if (hits.length === 0 || matched === 'some') return { groups };
    const items = hits.map(({ item }) => ({
      label: item.symptoms.length > 0 ? item.symptoms.join(', ') : 'No symptom recorded',
      href: `/cases/${item.id}`,
      note: [item.device.label, ...item.causes.map((cause) => cause.label)].join(', '),
    }));
    return { groups: [...groups, { kind: 'case', items }] };
  }),
});

/** Similar cases on the page that lists all of them. */
const SIMILAR_SHOWN = 50;
/** Fewer letters than these begin words of nearly every case. */
const LEAST_TYPED = 3;

async function findCases(ctx: { db: Context['db']; search: Context['search']; casebook: Casebook }, query: SearchQuery): Promise<SearchAnswer> {
  const found = await ctx.search().search(query);
  return { ...found, hits: await showHits(ctx.db, ctx.casebook.model, found.hits) };
}
