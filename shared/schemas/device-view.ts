import { z } from 'zod';
import { causeShareSchema, countedShareSchema, crossTableSchema, monthCountSchema, namedSchema, namedShareSchema } from './counted-share';
import { boardSchema } from './device';
import { categorySchema, logicStateSchema, unitSchema } from './terms';

/** A part that fails more often here than on other devices of the category. */
export const weakSpotSchema = namedSchema.extend({
  here: countedShareSchema,
  elsewhere: countedShareSchema.describe('Of the other devices of the category.'),
});
export type WeakSpot = z.infer<typeof weakSpotSchema>;

/** What changed between two board revisions in a row. */
export const revisionChangeSchema = z.object({
  from: namedSchema,
  to: namedSchema,
  parts: z.array(
    z.object({
      designator: z.string(),
      role: namedSchema,
      kind: z.enum(['added', 'removed', 'changed']),
      before: z.string().nullable().describe('Number and package on the earlier board.'),
      after: z.string().nullable(),
    }),
  ),
  faults: z
    .array(namedSchema.extend({ before: countedShareSchema, after: countedShareSchema }))
    .describe('Parts at fault clearly more or less often: their intervals do not overlap.'),
});
export type RevisionChange = z.infer<typeof revisionChangeSchema>;

/** A device as a whole: its boards, faults, weak spots, and what changed between its revisions. */
export const deviceViewSchema = namedSchema.extend({
  summary: z.string(),
  maker: namedSchema,
  category: categorySchema,
  cases: z.int().min(0),
  boards: z.array(boardSchema.extend({ label: z.string(), cases: z.int().min(0), workingUnits: z.int().min(0) })),
  causes: z.array(causeShareSchema),
  causeNotFound: z.int().min(0),
  symptoms: z.array(namedShareSchema),
  weakSpots: z.array(weakSpotSchema),
  categoryCases: z.int().min(0).describe('Cases of the other devices of the category, which the weak spots are held against.'),
  revisions: z.array(revisionChangeSchema),
  together: crossTableSchema.describe('Symptoms by causes: cases that have both.'),
  months: z.array(monthCountSchema),
});
export type DeviceView = z.infer<typeof deviceViewSchema>;

const range = z.object({ centre: z.number(), low: z.number(), high: z.number(), readings: z.int(), setAside: z.int() });

/** What working units of a board show, part by part and pin by pin. */
export const usualPartSchema = z.object({
  designator: z.string(),
  units: z.int().min(0),
  pins: z.array(
    z.object({
      pin: z.string(),
      name: z.string().nullable().describe('The name of the pin, where the part list knows it.'),
      units: z.int().min(0),
      states: z.array(z.object({ state: logicStateSchema, count: z.int().min(0) })),
      numbers: z.array(z.object({ unit: unitSchema, readings: z.int().min(0), usual: range.nullable() })),
    }),
  ),
});
export type UsualPartView = z.infer<typeof usualPartSchema>;

export const boardReadingsSchema = z.object({
  board: namedSchema,
  units: z.int().min(0).describe('Working units of this board that were read.'),
  parts: z.array(usualPartSchema),
});
export type BoardReadings = z.infer<typeof boardReadingsSchema>;
