import { z } from 'zod';
import { boardReadings } from '../../../shared/domain/browse/board-readings';
import { deviceView } from '../../../shared/domain/browse/device-view';
import { fixLines, fixView } from '../../../shared/domain/browse/fix-view';
import { partLines, partView } from '../../../shared/domain/browse/part-view';
import { symptomLines, symptomQuestion, symptomView } from '../../../shared/domain/browse/symptom-view';
import { rowsInScope } from '../../../shared/domain/casebook/case-scope';
import { monthCounts } from '../../../shared/domain/casebook/case-months';
import { symptomsByCauses } from '../../../shared/domain/casebook/cross-table';
import { currentSlug } from '../../../shared/domain/words/word-aliases';
import { AppError } from '../../../shared/errors';
import { crossTableSchema, monthCountSchema } from '../../../shared/schemas/counted-share';
import { boardReadingsSchema, deviceViewSchema } from '../../../shared/schemas/device-view';
import { fixLineSchema, fixViewSchema } from '../../../shared/schemas/fix-view';
import { partLineSchema, partViewSchema } from '../../../shared/schemas/part-view';
import { symptomLineSchema, symptomViewSchema } from '../../../shared/schemas/symptom-view';
import { slugSchema } from '../../../shared/schemas/terms';
import { countWorkingUnitsByBoard, listWorkingUnitsOfBoard } from '../../repositories/working-unit-repository';
import { readyToAnswer } from '../../services/ready-to-answer';
import { publicProcedure, router } from '../init';
import { knownDevice } from '../known-device';

const bySlug = z.object({ slug: slugSchema });

const symptomInput = bySlug.extend({ device: slugSchema.nullable().default(null).describe('Model or board revision.') });

/** What a repairer reads when nothing is broken yet: symptoms, devices, parts and fixes, each with what was counted. */
export const browseRouter = router({
  /** Cases over time, and which symptoms go with which causes. */
  overview: publicProcedure
    .output(z.object({ months: z.array(monthCountSchema), together: crossTableSchema }))
    .query(({ ctx }) => {
      const { model } = ctx.casebook;
      const all = rowsInScope(model, {});
      return { months: monthCounts(model, all), together: symptomsByCauses(model, all, { rows: 12, columns: 8 }) };
    }),

  /** Every symptom, with its cases and the commonest cause. */
  listSymptoms: publicProcedure.output(z.array(symptomLineSchema)).query(({ ctx }) => symptomLines(ctx.casebook.model)),

  /** A symptom: how often, where, what it was, and what cured it. One that was merged is the one that stands for it. */
  getSymptom: publicProcedure
    .input(symptomInput)
    .output(symptomViewSchema)
    .query(async ({ ctx, input }) => {
      knownDevice(ctx.casebook.model, input.device);
      const { model } = ctx.casebook;
      const symptom = currentSlug(model.words.aliases, 'symptom', input.slug);
      await readyToAnswer(model, symptomQuestion(symptom, input.device));
      return found(symptomView(model, symptom, input.device));
    }),

  /** A device: its boards, faults, weak spots, and what changed between its revisions. */
  getDevice: publicProcedure
    .input(bySlug)
    .output(deviceViewSchema)
    .query(async ({ ctx, input }) => {
      const view = deviceView(ctx.casebook.model, input.slug, await countWorkingUnitsByBoard(ctx.db));
      if (view === null) throw new AppError('device-not-found');
      return view;
    }),

  /** What working units of a board show, pin by pin. */
  getBoardReadings: publicProcedure
    .input(bySlug)
    .output(boardReadingsSchema)
    .query(async ({ ctx, input }) => {
      const place = ctx.casebook.model.words.devices.get(input.slug);
      if (!place?.board) throw new AppError('device-not-found');
      return boardReadings(place.board, place.label, await listWorkingUnitsOfBoard(ctx.db, input.slug));
    }),

  /** Every part that can be at fault. */
  listParts: publicProcedure.output(z.array(partLineSchema)).query(({ ctx }) => partLines(ctx.casebook.model)),

  /** A part by its role: where it sits, how it fails, how to tell. */
  getPart: publicProcedure
    .input(bySlug)
    .output(partViewSchema)
    .query(({ ctx, input }) => found(partView(ctx.casebook.model, input.slug))),

  /** Every fix, with how often it cured. */
  listFixes: publicProcedure.output(z.array(fixLineSchema)).query(({ ctx }) => fixLines(ctx.casebook.model)),

  /** A fix: for what, how often it worked, what it takes. One that was merged is the one that stands for it. */
  getFix: publicProcedure
    .input(bySlug)
    .output(fixViewSchema)
    .query(({ ctx: { casebook }, input }) => {
      const { model } = casebook;
      return found(fixView(model, currentSlug(model.words.aliases, 'fix', input.slug)));
    }),
});

function found<T>(view: T | null): T {
  if (view === null) throw new AppError('entry-not-found');
  return view;
}
