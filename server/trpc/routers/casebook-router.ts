import { z } from 'zod';
import { caseView } from '../../../shared/domain/casebook/case-view';
import { deviceChoices } from '../../../shared/domain/casebook/device-choices';
import { fixRecord } from '../../../shared/domain/casebook/fix-record';
import { listAccepted } from '../../../shared/domain/casebook/list-cases';
import { suggestEntries } from '../../../shared/domain/casebook/suggest-entries';
import { AppError } from '../../../shared/errors';
import { caseIdSchema } from '../../../shared/schemas/case';
import { caseListSchema, publishedCaseSchema } from '../../../shared/schemas/case-view';
import { slugSchema } from '../../../shared/schemas/terms';
import { getCase } from '../../repositories/case-repository';
import { findNewestEvaluation } from '../../repositories/evaluation-repository';
import { countSecondReports } from '../../repositories/second-reports';
import { findExcerpts } from '../../services/answer-question';
import { publicProcedure, router } from '../init';
import { knownDevice } from '../known-device';

const ENTRY_KINDS = ['symptom', 'check', 'fix', 'cause'] as const;

const suggestInput = z.object({
  text: z.string().max(200, 'Keep what is typed under 200 characters.'),
  kinds: z
    .array(z.enum(ENTRY_KINDS))
    .min(1)
    .max(4)
    .default([...ENTRY_KINDS]),
  limit: z.int().min(1).max(50).default(12),
});

const slugOrNone = slugSchema.nullable().default(null);

const listInput = z.object({
  device: slugOrNone.describe('Model or board revision.'),
  symptom: slugOrNone.describe('Recorded as present.'),
  cause: slugOrNone.describe('Found to be the cause.'),
  fix: slugOrNone.describe('Tried, with whatever result.'),
  part: slugOrNone.describe('Role of a part that was a cause.'),
  cursor: z.string().max(40).nullable().default(null),
  take: z.int().min(1).max(100).default(20),
});

const fixesInput = z.object({
  symptoms: z.array(slugSchema).max(60).default([]),
  device: slugSchema.nullable().default(null),
  cause: slugSchema.nullable().default(null),
});

export const casebookRouter = router({
  /** How much there is. */
  overview: publicProcedure.query(({ ctx }) => {
    const { model, demo, workingUnits } = ctx.casebook;
    const choices = deviceChoices(model);
    const models = choices.filter((c) => c.level === 'model');
    return {
      cases: model.entries.size,
      devices: models.length,
      boards: choices.length - models.length,
      workingUnits,
      demo,
      casesPerDevice: models.map(({ slug, label, cases }) => ({ slug, label, cases })),
    };
  }),

  /** One published case in full, with how many times it was reported. A case that is not published is not found. */
  getCase: publicProcedure.input(z.object({ id: caseIdSchema })).output(publishedCaseSchema).query(async ({ ctx, input }) => {
    const record = await getCase(ctx.db, input.id);
    if (record.status !== 'accepted') throw new AppError('case-not-found');
    return { ...caseView(ctx.casebook.model.words, record), reported: 1 + (await countSecondReports(ctx.db, record.id)) };
  }),

  /** Published cases, latest months first. */
  listCases: publicProcedure.input(listInput.prefault({})).output(caseListSchema).query(async ({ ctx, input }) => {
    knownDevice(ctx.casebook.model, input.device);
    const { cases, next } = listAccepted(ctx.casebook.model, input);
    const excerpts = await findExcerpts(ctx.db, cases.map(({ id }) => id));
    return { cases: cases.map((item) => ({ ...item, excerpt: excerpts.get(item.id) ?? '' })), next };
  }),

  /** The whole vocabulary. */
  listVocabulary: publicProcedure.query(({ ctx }) => ctx.casebook.model.coding.vocabulary),

  /** Entries that what was typed so far may mean. */
  suggest: publicProcedure.input(suggestInput).query(({ ctx, input }) => suggestEntries(ctx.casebook.model.words, input)),

  /** Devices that can be chosen: models and their board revisions, with their cases. */
  listDevices: publicProcedure.query(({ ctx }) => deviceChoices(ctx.casebook.model)),

  /** The catalogue, parts and pins included. */
  getCatalogue: publicProcedure.query(({ ctx }) => ctx.casebook.model.coding.catalogue),

  /** Which fix most often resolved it, for symptoms, a device, a cause. */
  fixesFor: publicProcedure.input(fixesInput.prefault({})).query(({ ctx, input }) => {
    const { model } = ctx.casebook;
    knownDevice(model, input.device);
    const isKnown =
      input.symptoms.every((s) => model.words.symptoms.has(s)) && (input.cause === null || model.words.causes.has(input.cause));
    if (!isKnown) throw new AppError('entry-not-found');
    return fixRecord(model, input);
  }),

  /** What the figures rest on, and the latest evaluation; null where none was run. */
  method: publicProcedure.query(async ({ ctx }) => {
    const { settings, model } = ctx.casebook;
    const evaluation = await findNewestEvaluation(ctx.db);
    return {
      settingsHash: settings.hash,
      fittedAt: settings.fittedAt?.toISOString() ?? null,
      records: model.entries.size,
      evaluation: evaluation && {
        at: evaluation.at.toISOString(),
        records: evaluation.recordCount,
        result: JSON.parse(evaluation.document) as unknown,
      },
    };
  }),
});
