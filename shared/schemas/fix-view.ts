import { z } from 'zod';
import { fixRecordSchema, monthCountSchema, namedSchema } from './counted-share';
import { hazardSchema, instrumentSchema, needSchema, stageSchema } from './terms';

const cost = z.object({ low: z.int().min(0), high: z.int().min(0) });

/** A fix on one line of a list. */
export const fixLineSchema = fixRecordSchema.extend({ role: namedSchema, minutes: z.number(), stage: stageSchema });
export type FixLine = z.infer<typeof fixLineSchema>;

/** What the casebook knows of a fix: for what, how often it worked, what it takes, what to do first. */
export const fixViewSchema = namedSchema.extend({
  meaning: z.string(),
  synonyms: z.array(z.string()),
  role: namedSchema,
  howTo: z.string(),
  first: z.string().describe('What to do before anything else.'),
  minutes: z.number(),
  partCostCents: cost,
  stage: stageSchema,
  risk: z.union([z.literal(0), z.literal(1), z.literal(2)]).describe('Risk to the unit: 0 none, 1 slight, 2 real.'),
  cautions: z.array(hazardSchema),
  instruments: z.array(instrumentSchema),
  needs: z.array(needSchema),
  addresses: z.array(namedSchema.extend({ role: namedSchema })).describe('Causes that it is for.'),
  record: fixRecordSchema.describe('Over all devices and causes.'),
  byDevice: z.array(fixRecordSchema),
  byCause: z.array(fixRecordSchema),
  bySymptom: z.array(fixRecordSchema),
  months: z.array(monthCountSchema),
});
export type FixView = z.infer<typeof fixViewSchema>;
