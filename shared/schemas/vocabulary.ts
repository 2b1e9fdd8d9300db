import { z } from 'zod';
import {
  areaSchema,
  categorySchema,
  hazardSchema,
  instrumentSchema,
  needSchema,
  slugSchema,
  stageSchema,
  unitSchema,
} from './terms';

const label = z.string().min(2).max(80);
const meaning = z.string().min(10).max(300);
const synonyms = z.array(z.string().min(1).max(60));

/** What every vocabulary entry carries: a slug, a label, one sentence of meaning, and synonyms. */
const entry = { slug: slugSchema, label, meaning, synonyms };

/** A part's job on a board ("video RAM"), or something outside the unit ("display"). */
export const roleSchema = z.object({ ...entry, outside: z.boolean() });
export type Role = z.infer<typeof roleSchema>;

/** Set where moderators have retired an entry: cases keep it, and nobody is offered it any more. */
const retired = z.literal(true).optional();

export const symptomSchema = z.object({
  ...entry,
  retired,
  area: areaSchema,
  /** Phrases that say the symptom is absent ("sound fine"); besides plain negation of a synonym. */
  absentPhrases: synonyms,
  /** Categories where the symptom can occur at all. */
  categories: z.array(categorySchema).min(1),
  /** Symptoms that, when present, make this one impossible to observe. */
  hiddenBy: z.array(slugSchema),
});
export type Symptom = z.infer<typeof symptomSchema>;

export const outcomeSchema = z.object({ slug: slugSchema, label, synonyms });

/**
 * From a number to an outcome. Bands are half-open [min, max) in the rule's unit, in ascending order,
 * cover everything they claim to, and name the source of their limits. `overload` is what a meter
 * showing OL means.
 */
export const numberRuleSchema = z.object({
  unit: unitSchema,
  bands: z
    .array(z.object({ outcome: slugSchema, min: z.number().nullable(), max: z.number().nullable() }))
    .min(1),
  overload: slugSchema.nullable(),
  source: z.string().min(5).max(300),
});
export type NumberRule = z.infer<typeof numberRuleSchema>;

export const checkSchema = z.object({
  ...entry,
  retired,
  area: areaSchema,
  howTo: z.string().min(20).max(900),
  /** Role of the part that is looked at. */
  targetRole: slugSchema,
  /**
   * Roles that the working outcome clears: with a part of them at fault, not just now and then, the check would most
   * likely have shown something else. Left out or empty where that is not plain; then the check counts as about its
   * target role.
   */
  clears: z.array(slugSchema).optional(),
  instruments: z.array(instrumentSchema),
  needs: z.array(needSchema),
  stage: stageSchema,
  minutes: z.number().positive().max(240),
  cautions: z.array(hazardSchema),
  outcomes: z.array(outcomeSchema).min(2),
  /** The outcome that a working unit shows. */
  workingOutcome: slugSchema,
  rule: numberRuleSchema.nullable(),
  /** Checks that have to be done first. */
  prerequisites: z.array(slugSchema),
  /** Risk to the unit: 0 none, 1 slight, 2 real. */
  risk: z.union([z.literal(0), z.literal(1), z.literal(2)]),
  categories: z.array(categorySchema).min(1),
});
export type Check = z.infer<typeof checkSchema>;

/** A cause is a part's role and its failure mode. `no-fault-found` is one, with role `no-part`. */
export const causeSchema = z.object({
  ...entry,
  retired,
  role: slugSchema,
  mode: z.string().min(2).max(60),
  /** One sentence: how it is usually proved. */
  usualProof: z.string().min(10).max(300),
  categories: z.array(categorySchema).min(1),
});
export type Cause = z.infer<typeof causeSchema>;

export const fixSchema = z.object({
  ...entry,
  retired,
  action: z.enum(['replace', 'reflow', 'clean', 'reseat', 'adjust', 'repair', 'recap', 'swap-outside', 'remove']),
  role: slugSchema,
  howTo: z.string().min(20).max(900),
  /** What to do first, in one sentence. */
  first: z.string().min(5).max(300),
  minutes: z.number().positive().max(600),
  partCostCents: z.object({ low: z.int().min(0), high: z.int().min(0) }),
  stage: stageSchema,
  instruments: z.array(instrumentSchema),
  needs: z.array(needSchema),
  cautions: z.array(hazardSchema),
  /** Causes that this fix addresses. */
  addresses: z.array(slugSchema).min(1),
  risk: z.union([z.literal(0), z.literal(1), z.literal(2)]),
  categories: z.array(categorySchema).min(1),
});
export type Fix = z.infer<typeof fixSchema>;

export const vocabularySchema = z.object({
  roles: z.array(roleSchema),
  symptoms: z.array(symptomSchema),
  checks: z.array(checkSchema),
  causes: z.array(causeSchema),
  fixes: z.array(fixSchema),
});
export type Vocabulary = z.infer<typeof vocabularySchema>;
