import { z } from 'zod';
import { causeShareSchema, countedShareSchema, fixRecordSchema, monthCountSchema, namedSchema, namedShareSchema } from './counted-share';
import { designatorSchema } from './case';
import { hazardSchema, stageSchema } from './terms';

/** A part on one line of a list. */
export const partLineSchema = namedSchema.extend({
  meaning: z.string(),
  outside: z.boolean(),
  cases: z.int().min(0).describe('Cases whose cause it was.'),
  boards: z.int().min(0).describe('Board revisions that carry it.'),
});
export type PartLine = z.infer<typeof partLineSchema>;

/** The very same part (number and package) and where it sits. */
export const partPlacesSchema = z.object({
  partNumber: z.string().nullable(),
  package: z.string(),
  pins: z.int(),
  boards: z.array(namedSchema.extend({ designators: z.array(designatorSchema) })),
});
export type PartPlaces = z.infer<typeof partPlacesSchema>;

/** What the casebook knows of a part: where it sits, how it fails, how to tell, and what to do. */
export const partViewSchema = namedSchema.extend({
  meaning: z.string(),
  synonyms: z.array(z.string()),
  outside: z.boolean().describe('Whether it is outside the unit.'),
  places: z.array(partPlacesSchema).describe('One entry per part number; boards of one entry can lend each other the part.'),
  share: countedShareSchema.describe('Cases whose cause it was, of all accepted cases.'),
  suspected: countedShareSchema.describe('Cases whose cause it was, of those in which it was checked or a fix of it was tried.'),
  failures: z.array(causeShareSchema).describe('Ways in which it fails, commonest first.'),
  symptoms: z.array(namedShareSchema).describe('Symptoms seen where it was the cause.'),
  devices: z.array(namedShareSchema).describe('Per model: cases whose cause it was, of all its cases.'),
  fixes: z.array(fixRecordSchema),
  checks: z.array(
    namedSchema.extend({
      meaning: z.string(),
      howTo: z.string(),
      stage: stageSchema,
      minutes: z.number(),
      cautions: z.array(hazardSchema),
      working: z.string().describe('What a working unit shows.'),
    }),
  ),
  months: z.array(monthCountSchema),
});
export type PartView = z.infer<typeof partViewSchema>;
