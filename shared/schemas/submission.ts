import { z } from 'zod';
import { CASE_OUTCOMES, caseIdSchema, FIX_RESULTS, NARRATIVE_MAX_LENGTH, PROOFS } from './case';
import { PHOTO_LIMITS } from './photo';
import { QUESTION_TEXT_LENGTH } from './question';
import { slugSchema } from './terms';

/** Largest numbers of things and of characters that the form takes; the page and the procedures share them. */
export const SUBMISSION_LIMITS = {
  symptoms: 60,
  steps: 120,
  fixesAtOnce: 8,
  causes: 6,
  afterChecks: 20,
  readings: 400,
  pin: 16,
  proposals: 8,
  kept: 60,
  designators: 160,
  short: 40,
  word: 80,
  meaning: 400,
  own: QUESTION_TEXT_LENGTH,
  narrative: NARRATIVE_MAX_LENGTH,
} as const;

const most = (count: number, what: string) => ({ error: `No more than ${count} ${what}.` });
const text = (length: number) => z.string().max(length, `Keep this under ${length + 1} characters.`);
/** A choice not made yet is the empty text. */
const slugOrNone = z
  .string()
  .refine((slug) => slug === '' || slugSchema.safeParse(slug).success, 'Choose an entry from the list.');
const oneOf = <const T extends readonly string[]>(values: T) =>
  z.enum(['', ...values] as ['', ...T], { error: `Choose one of: ${values.join(', ')}.` });
/** Makes a row of the form findable again while rows are moved. */
const rowKey = z.string().regex(/^[a-z0-9-]{1,40}$/, 'A row of the form has lost its name. Load the page again.');

export const PROPOSAL_KINDS = ['symptom', 'check', 'fix', 'cause'] as const;
export type ProposalKind = (typeof PROPOSAL_KINDS)[number];

/** A word that the vocabulary lacks, as proposed with a case. */
export const proposalSchema = z.object({
  key: rowKey,
  kind: z.enum(PROPOSAL_KINDS),
  word: text(SUBMISSION_LIMITS.word),
  meaning: text(SUBMISSION_LIMITS.meaning),
});
export type Proposal = z.infer<typeof proposalSchema>;

const draftCheckSchema = z.object({
  key: rowKey,
  kind: z.literal('check'),
  check: slugOrNone,
  outcome: slugOrNone,
  designator: text(SUBMISSION_LIMITS.short),
  /** As typed: `4.62 V`. */
  reading: text(SUBMISSION_LIMITS.short),
});
const draftFixSchema = z.object({
  key: rowKey,
  kind: z.literal('fix'),
  fixes: z
    .array(z.object({ fix: slugOrNone, designator: text(SUBMISSION_LIMITS.short) }))
    .min(1)
    .max(SUBMISSION_LIMITS.fixesAtOnce, most(SUBMISSION_LIMITS.fixesAtOnce, 'fixes done together')),
  result: oneOf(FIX_RESULTS),
});
/** A reading at a pin, as typed. */
const draftReadingSchema = z.object({
  key: rowKey,
  designator: text(SUBMISSION_LIMITS.short),
  pin: text(SUBMISSION_LIMITS.pin),
  /** A state or a number with its unit: `pulsing`, `4.62 V`. */
  reading: text(SUBMISSION_LIMITS.short),
});
export type DraftReadingRow = z.infer<typeof draftReadingSchema>;
export type DraftCheck = z.infer<typeof draftCheckSchema>;
export type DraftFix = z.infer<typeof draftFixSchema>;
export type DraftStep = DraftCheck | DraftFix;

/** A case as it stands in the form: anything may still be missing, numbers are as they were typed. */
export const draftDocumentSchema = z.object({
  device: slugOrNone,
  month: text(SUBMISSION_LIMITS.short),
  /** What was seen, in one's own words, before it is read into the vocabulary; not part of the case. */
  ownWords: text(SUBMISSION_LIMITS.own),
  symptoms: z
    .array(z.object({ symptom: slugSchema, present: z.boolean() }))
    .max(SUBMISSION_LIMITS.symptoms, most(SUBMISSION_LIMITS.symptoms, 'symptoms')),
  symptomsComplete: z.boolean(),
  steps: z
    .array(z.discriminatedUnion('kind', [draftCheckSchema, draftFixSchema]))
    .max(SUBMISSION_LIMITS.steps, most(SUBMISSION_LIMITS.steps, 'checks and fixes')),
  causes: z
    .array(z.object({ cause: slugSchema, designators: text(SUBMISSION_LIMITS.designators) }))
    .max(SUBMISSION_LIMITS.causes, most(SUBMISSION_LIMITS.causes, 'causes')),
  proof: oneOf(PROOFS),
  /** Key of the check that proved the cause, or empty. */
  provedBy: z.union([z.literal(''), rowKey]),
  outcome: oneOf(CASE_OUTCOMES),
  afterRepairChecks: z
    .array(slugSchema)
    .max(SUBMISSION_LIMITS.afterChecks, most(SUBMISSION_LIMITS.afterChecks, 'checks after the repair')),
  soakMinutes: text(SUBMISSION_LIMITS.short),
  /** Readings at pins, as typed or from a bench log; a form saved before there were any has none. */
  readings: z
    .array(draftReadingSchema)
    .max(SUBMISSION_LIMITS.readings, most(SUBMISSION_LIMITS.readings, 'readings'))
    .default([]),
  narrative: text(SUBMISSION_LIMITS.narrative),
  /** Photos that the draft holds, each with its words for those who cannot see it. */
  photos: z
    .array(z.object({ id: caseIdSchema, alt: text(PHOTO_LIMITS.alt) }))
    .max(PHOTO_LIMITS.count, most(PHOTO_LIMITS.count, 'photos'))
    .default([]),
  proposals: z.array(proposalSchema).max(SUBMISSION_LIMITS.proposals, most(SUBMISSION_LIMITS.proposals, 'proposed words')),
  /** Stretches found as personal details of which the contributor said that they are none. */
  kept: z.array(text(200)).max(SUBMISSION_LIMITS.kept, most(SUBMISSION_LIMITS.kept, 'stretches kept')),
});
export type DraftDocument = z.infer<typeof draftDocumentSchema>;

/** What is wrong with one field of the form; `field` is its path, such as `steps.2.outcome`. */
export type FieldProblem = { field: string; reason: string };

/** Something in a text of the form that can give a person away. */
export type FoundDetail = {
  field: string;
  kind: string;
  certainty: 'direct' | 'possible';
  text: string;
  suggestion: string;
  start: number;
  end: number;
};

/** The empty form, with the month of now. */
export function emptyDraft(month: string): DraftDocument {
  return {
    device: '',
    month,
    ownWords: '',
    symptoms: [],
    symptomsComplete: false,
    steps: [],
    causes: [],
    proof: '',
    provedBy: '',
    outcome: '',
    afterRepairChecks: [],
    soakMinutes: '',
    readings: [],
    narrative: '',
    photos: [],
    proposals: [],
    kept: [],
  };
}
