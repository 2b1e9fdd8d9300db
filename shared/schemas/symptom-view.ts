import { z } from 'zod';
import { causeShareSchema, countedShareSchema, fixRecordSchema, monthCountSchema, namedSchema, namedShareSchema } from './counted-share';
import { areaSchema, categorySchema, hazardSchema, stageSchema } from './terms';

/** A symptom on one line of a list. */
export const symptomLineSchema = namedSchema.extend({
  meaning: z.string(),
  area: areaSchema,
  cases: z.int().min(0),
  /** The commonest cause among them; null where none was found. */
  leading: namedShareSchema.nullable(),
});
export type SymptomLine = z.infer<typeof symptomLineSchema>;

/** What the casebook knows of a symptom, on all devices or on one. */
export const symptomViewSchema = namedSchema.extend({
  meaning: z.string(),
  synonyms: z.array(z.string()),
  area: areaSchema,
  categories: z.array(categorySchema),
  hiddenBy: z.array(namedSchema).describe('Symptoms that make this one impossible to see.'),
  device: namedSchema.nullable().describe('The device that the figures are of; null for all.'),
  share: countedShareSchema.describe('Cases with the symptom, of all accepted cases of the device.'),
  devices: z.array(namedShareSchema).describe('Per model: cases with the symptom, of all its cases.'),
  causes: z.array(causeShareSchema).describe('Counted causes among the cases with the symptom, commonest first.'),
  causeNotFound: z.int().min(0),
  fixes: z.array(fixRecordSchema).describe('Fixes tried on such cases, ranked by the lower end of the interval.'),
  firstChecks: z
    .array(
      namedSchema.extend({
        role: namedSchema,
        stage: stageSchema,
        minutes: z.number(),
        bits: z.number().describe('Expected information about the cause.'),
        cautions: z.array(hazardSchema),
      }),
    )
    .describe('Checks to do first where nothing but the symptom is known, in order.'),
  months: z.array(monthCountSchema),
});
export type SymptomView = z.infer<typeof symptomViewSchema>;
