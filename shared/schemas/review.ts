import { z } from 'zod';
import { caseIdSchema } from './case';
import { draftDocumentSchema, type FieldProblem, type FoundDetail } from './submission';
import { slugSchema } from './terms';

/** Why a submission is declined. What each says to whoever posted it stands in `DECLINE_WORDS`. */
export const DECLINE_REASONS = [
  'not-one-repair',
  'outside-the-casebook',
  'too-little',
  'cannot-all-be-true',
  'says-who',
  'unsafe',
  'not-meant',
  'other',
] as const;
export type DeclineReason = (typeof DECLINE_REASONS)[number];

export const DECLINE_WORDS: Record<DeclineReason, string> = {
  'not-one-repair': 'This does not tell the repair of one unit.',
  'outside-the-casebook': 'The casebook does not cover this device.',
  'too-little': 'There is too little in it for the next person to learn from.',
  'cannot-all-be-true': 'What it states cannot all be true, and it could not be cleared up.',
  'says-who': 'It cannot be told without saying who somebody is.',
  unsafe: 'It describes work that would put somebody in danger.',
  'not-meant': 'It advertises something, or is not meant seriously.',
  other: 'For another reason.',
};

/** What somebody has against a published case. */
export const REPORT_REASONS = ['says-who', 'wrong', 'same-repair', 'unsafe', 'other'] as const;
export type ReportReason = (typeof REPORT_REASONS)[number];

export const REPORT_WORDS: Record<ReportReason, string> = {
  'says-who': 'It says who or where somebody is',
  wrong: 'Something in it is wrong',
  'same-repair': 'The same repair is published twice',
  unsafe: 'It describes work that is dangerous as it stands there',
  other: 'Something else',
};

export const SETTLEMENTS = ['retracted', 'corrected', 'left'] as const;
export type Settlement = (typeof SETTLEMENTS)[number];

/** Largest numbers of characters and things in what is written at a review. */
export const REVIEW_LIMITS = { text: 600, asked: 8, report: 600 } as const;

const text = (least: number, hint: string) =>
  z
    .string()
    .trim()
    .min(least, hint)
    .max(REVIEW_LIMITS.text, `Keep this under ${REVIEW_LIMITS.text + 1} characters.`);

/** The content that a decision is about, as its SHA-256: what was changed meanwhile is not decided on unseen. */
const seen = z.string().regex(/^[0-9a-f]{64}$/, 'The page has lost what it showed. Load it again.');
const decided = { id: caseIdSchema, seen };

export const acceptSchema = z.object(decided);
/** `text` says why, for whoever posted it. */
export const editedSchema = z.object({ ...decided, document: draftDocumentSchema, text: text(0, '').default('') });
/** Part of the case that a change is asked for at: the form's own field paths. */
export const fieldPathSchema = z.string().regex(/^[a-zA-Z]+(\.\d{1,3})?$/, 'Choose the part that should change.');
export const askChangesSchema = z.object({
  ...decided,
  asked: z
    .array(z.object({ field: fieldPathSchema, reason: text(5, 'Say what should change, in a sentence.') }))
    .min(1, 'Say what should change, at one field at least.')
    .max(REVIEW_LIMITS.asked, `No more than ${REVIEW_LIMITS.asked} at once.`),
});
export const declineSchema = z
  .object({
    ...decided,
    reason: z.enum(DECLINE_REASONS, { error: 'Choose a reason.' }),
    text: text(0, '').default(''),
  })
  .refine(({ reason, text: words }) => reason !== 'other' || words.length >= 5, {
    path: ['text'],
    message: 'Say in a sentence why.',
  });
export const mergeSchema = z.object({ ...decided, into: caseIdSchema });
export const retractSchema = z.object({ ...decided, text: text(5, 'Say in a sentence why it is taken back.') });
export const reportSchema = z.object({
  id: caseIdSchema,
  reason: z.enum(REPORT_REASONS, { error: 'Choose a reason.' }),
  text: z
    .string()
    .trim()
    .min(10, 'Say in a sentence what it is.')
    .max(REVIEW_LIMITS.report, `Keep this under ${REVIEW_LIMITS.report + 1} characters.`),
  /** No person sees this field: whoever fills it in is a program. */
  website: z.string().max(0, 'Leave this field empty.').default(''),
});

/** Which of the waiting cases are shown. */
export const queueFilterSchema = z.object({
  device: slugSchema.nullable().default(null),
  marks: z.boolean().default(false),
  newcomer: z.boolean().default(false),
  words: z.boolean().default(false),
  order: z.enum(['oldest', 'newest']).default('oldest'),
});
export type QueueFilter = z.infer<typeof queueFilterSchema>;

/** What came of a decision. Nothing was changed but where it is `done`. */
export type DecisionOutcome =
  | { status: 'done' }
  | { status: 'refused'; fields: Record<string, string> }
  | { status: 'problems'; problems: FieldProblem[] }
  | { status: 'details'; details: FoundDetail[] };

/** Who looks at a waiting case. */
export type ClaimView = { state: 'free' } | { state: 'mine'; minutes: number } | { state: 'other'; by: string; minutes: number };

/** One line of the queue. */
export type QueueLine = {
  id: string;
  again: boolean;
  days: number;
  device: string;
  symptoms: string[];
  causes: string[];
  marks: number;
  words: number;
  newcomer: boolean;
  own: boolean;
  claim: ClaimView;
};
