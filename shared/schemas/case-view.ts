import { z } from 'zod';
import {
  caseIdSchema,
  caseOutcomeSchema,
  caseStatusSchema,
  designatorSchema,
  fixResultSchema,
  monthSchema,
  proofSchema,
  readingSchema,
} from './case';
import { stageSchema, unitSchema } from './terms';

const label = z.string();
/** Slug of the part's role, for what is about a part. */
const role = z.string();

const checkStepViewSchema = z.object({
  kind: z.literal('check'),
  id: z.string(),
  label,
  role,
  stage: stageSchema,
  outcome: z.string(),
  outcomeLabel: z.string(),
  asWorking: z.boolean().describe('Whether this is the outcome that a working unit shows.'),
  designator: designatorSchema.nullable(),
  value: z.number().nullable(),
  unit: unitSchema.nullable(),
  proved: z.boolean().describe('Whether this is the check that proved the cause.'),
});

const fixStepViewSchema = z.object({
  kind: z.literal('fix'),
  fixes: z.array(z.object({ id: z.string(), label, designator: designatorSchema.nullable() })),
  stage: stageSchema,
  result: fixResultSchema,
});

export const caseStepViewSchema = z.discriminatedUnion('kind', [checkStepViewSchema, fixStepViewSchema]);
export type CaseStepView = z.infer<typeof caseStepViewSchema>;

/** One published case in full, with the words to show it; steps in the order in which they happened. */
export const caseViewSchema = z.object({
  id: caseIdSchema,
  status: caseStatusSchema,
  device: z.object({ slug: z.string(), label, level: z.enum(['board', 'model']), model: z.string() }),
  month: monthSchema,
  symptoms: z.array(z.object({ id: z.string(), label, present: z.boolean() })),
  symptomsComplete: z.boolean().describe('Whether an unlisted symptom is absent.'),
  steps: z.array(caseStepViewSchema),
  readings: z.array(readingSchema),
  causes: z.array(z.object({ id: z.string(), label, role, designators: z.array(designatorSchema) })),
  proof: proofSchema.nullable(),
  outcome: caseOutcomeSchema,
  afterRepairChecks: z.array(z.object({ id: z.string(), label, role })),
  soakMinutes: z.int().nullable(),
  narrative: z.string(),
});
export type CaseView = z.infer<typeof caseViewSchema>;

/** The same as it is published. */
export const publishedCaseSchema = caseViewSchema.extend({
  reported: z.int().min(1).describe('How many times this very repair was told; more than once where reports were merged.'),
});

/** A device that can be chosen: a model, or one board revision of it. */
export type DeviceChoice = {
  slug: string;
  label: string;
  level: 'model' | 'board';
  model: string;
  maker: string;
  category: string;
  /** Accepted cases of it; of all its boards for a model. */
  cases: number;
};

/** A vocabulary entry as offered while typing. */
export type Suggestion = {
  kind: 'symptom' | 'check' | 'fix' | 'cause';
  id: string;
  label: string;
  meaning: string;
  values: { value: string; label: string }[];
};

/** One line of a list of cases; symptoms are the labels of those present. */
export const caseListItemSchema = z.object({
  id: caseIdSchema,
  month: monthSchema,
  device: z.object({ slug: z.string(), label }),
  symptoms: z.array(label),
  causes: z.array(z.object({ id: z.string(), label, designators: z.array(designatorSchema) })),
  outcome: caseOutcomeSchema,
  excerpt: z.string().describe('The beginning of the narrative.'),
});
export type CaseListItem = z.infer<typeof caseListItemSchema>;

/** A page of cases; `next` is the cursor of the following one, null on the last. */
export const caseListSchema = z.object({ cases: z.array(caseListItemSchema), next: z.string().nullable() });
