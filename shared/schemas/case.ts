import { z } from 'zod';
import { logicStateSchema, slugSchema, unitSchema } from './terms';

export const FIX_RESULTS = ['no-change', 'symptom-changed', 'partly', 'cured', 'made-worse'] as const;
export const fixResultSchema = z.enum(FIX_RESULTS);
export type FixResult = z.infer<typeof fixResultSchema>;

/** How a cause was proved, strongest first; statistics weigh them in this order. */
export const PROOFS = ['substitution', 'measurement', 'repair-held', 'suspected'] as const;
export const proofSchema = z.enum(PROOFS);
export type Proof = z.infer<typeof proofSchema>;

export const CASE_OUTCOMES = ['resolved', 'partly-resolved', 'unresolved', 'not-economical'] as const;
export const caseOutcomeSchema = z.enum(CASE_OUTCOMES);
export type CaseOutcome = z.infer<typeof caseOutcomeSchema>;

export const CASE_STATUSES = ['draft', 'submitted', 'changes-requested', 'resubmitted', 'accepted', 'declined', 'withdrawn', 'retracted', 'merged'] as const;
export const caseStatusSchema = z.enum(CASE_STATUSES);
export type CaseStatus = z.infer<typeof caseStatusSchema>;

/** Opaque, random, never in order of time: 16 characters of lower-case base 32. */
export const caseIdSchema = z.string().regex(/^[a-z2-7]{16}$/, 'A case id is 16 letters and digits 2 to 7.');

/** Public times are months. */
export const monthSchema = z.string().regex(/^(19|20)[0-9]{2}-(0[1-9]|1[0-2])$/, 'Write the month as YYYY-MM.');

export const designatorSchema = z.string().regex(/^[A-Z]{1,4}[0-9]{1,4}[A-Z]?$/, 'Use a designator such as U14 or RN2.');

/** One reading at one pin: a logic state or a number with its unit. */
export const readingSchema = z
  .object({
    designator: designatorSchema,
    pin: z.string().min(1).max(16),
    state: logicStateSchema.nullable(),
    value: z.number().nullable(),
    unit: unitSchema.nullable(),
  })
  .refine((r) => (r.state !== null) !== (r.value !== null), 'Give a logic state or a number, not both.')
  .refine((r) => (r.value === null) === (r.unit === null), 'A number needs a unit.');
export type Reading = z.infer<typeof readingSchema>;

export const symptomFindingSchema = z.object({ symptom: slugSchema, present: z.boolean() });

export const checkStepSchema = z.object({
  kind: z.literal('check'),
  check: slugSchema,
  outcome: slugSchema,
  designator: designatorSchema.nullable(),
  value: z.number().nullable(),
  unit: unitSchema.nullable(),
});

/** Fixes done together are one attempt, credited as a group. */
export const fixStepSchema = z.object({
  kind: z.literal('fix'),
  fixes: z.array(z.object({ fix: slugSchema, designator: designatorSchema.nullable() })).min(1).max(8),
  result: fixResultSchema,
});
export const stepSchema = z.discriminatedUnion('kind', [checkStepSchema, fixStepSchema]);
export type CaseStep = z.infer<typeof stepSchema>;

export const NARRATIVE_MAX_LENGTH = 6000;

/** One unit's repair, as posted, imported, exported and seeded: the single description of a case. */
export const caseContentSchema = z
  .object({
    /** Board revision slug, or model slug where the revision is not known. */
    device: slugSchema,
    month: monthSchema,
    symptoms: z.array(symptomFindingSchema).max(60),
    /** "That is all I saw": an unlisted symptom is absent. */
    symptomsComplete: z.boolean(),
    /** Checks and fixes, in the order in which they happened. */
    steps: z.array(stepSchema).max(120),
    readings: z.array(readingSchema).max(400),
    /** Empty where the cause was not found. */
    causes: z.array(z.object({ cause: slugSchema, designators: z.array(designatorSchema).max(16) })).max(6),
    proof: proofSchema.nullable(),
    /** Position in `steps` of the check that proved the cause, if one did. */
    provedByStep: z.int().min(0).nullable(),
    outcome: caseOutcomeSchema,
    afterRepairChecks: z.array(slugSchema).max(20),
    soakMinutes: z.int().min(0).max(100_000).nullable(),
    narrative: z.string().max(NARRATIVE_MAX_LENGTH),
  })
  .superRefine((c, ctx) => {
    if (c.causes.length > 0 && c.proof === null) {
      ctx.addIssue({ code: 'custom', path: ['proof'], message: 'Say how the cause was proved.' });
    }
    if (c.provedByStep !== null && c.steps[c.provedByStep]?.kind !== 'check') {
      ctx.addIssue({ code: 'custom', path: ['provedByStep'], message: 'Name a check among the steps.' });
    }
  });
export type CaseContent = z.infer<typeof caseContentSchema>;

const monthsOrNone = z.int().min(1).max(600).nullable();

/** A case with its identity and, where something was reported and accepted, what became of it later. */
export const caseRecordSchema = z.object({
  id: caseIdSchema,
  content: caseContentSchema,
  status: caseStatusSchema,
  afterwards: z.object({ heldMonths: monthsOrNone, cameBackMonths: monthsOrNone }).optional(),
});
export type CaseRecord = z.infer<typeof caseRecordSchema>;

/** Readings from a unit that works: no symptoms, no cause. */
export const workingUnitSchema = z.object({
  id: caseIdSchema,
  device: slugSchema,
  month: monthSchema,
  readings: z.array(readingSchema).min(1).max(400),
});
export type WorkingUnitRecord = z.infer<typeof workingUnitSchema>;

/** On its way through review; only accepted ones count. */
export const WORKING_UNIT_STATUSES = ['submitted', 'accepted', 'declined', 'withdrawn'] as const;
export type WorkingUnitStatus = (typeof WORKING_UNIT_STATUSES)[number];
