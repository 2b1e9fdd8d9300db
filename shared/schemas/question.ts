import { z } from 'zod';
import { findingSchema } from './finding';
import { slugSchema } from './terms';

/** Longest text that a look-up takes. */
export const QUESTION_TEXT_LENGTH = 2_000;
const FINDINGS_MAX = 80;

/** Names a finding without its value: what was looked at, not what was seen. */
export const findingKeySchema = z.object({ kind: z.enum(['symptom', 'check', 'fix']), id: slugSchema });
export type FindingKey = z.infer<typeof findingKeySchema>;

/** The whole question of a look-up: the words, and what was changed after they were read. */
export const questionSchema = z.object({
  text: z.string().max(QUESTION_TEXT_LENGTH, `Keep the question under ${QUESTION_TEXT_LENGTH} characters.`).default(''),
  /** Board revision or model; null takes the one that the words mention. */
  device: slugSchema.nullable().default(null),
  /** "That is all I see": an unlisted symptom is absent. */
  complete: z.boolean().default(false),
  /** Findings added, or given another value than was read. */
  set: z.array(findingSchema).max(FINDINGS_MAX).default([]),
  /** Findings that were read and then taken out. */
  without: z.array(findingKeySchema).max(FINDINGS_MAX).default([]),
  /** A cause to be explained in full, however unlikely. */
  why: slugSchema.nullable().default(null),
});
export type Question = z.output<typeof questionSchema>;
