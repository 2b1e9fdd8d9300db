import { z } from 'zod';
import { caseIdSchema } from './case';

/** What became of a repair later. */
export const AFTER_KINDS = ['held', 'came-back'] as const;
export type AfterKind = (typeof AFTER_KINDS)[number];

/** Who reports it: whoever repaired the unit, or somebody else who knows it. */
export const AFTER_SOURCES = ['contributor', 'reader'] as const;
export type AfterSource = (typeof AFTER_SOURCES)[number];

export const AFTER_STATUSES = ['waiting', 'accepted', 'declined'] as const;
export type AfterStatus = (typeof AFTER_STATUSES)[number];

const months = z
  .int({ error: 'Write the months as a whole number, such as 6.' })
  .min(1, 'Write at least 1 month.')
  .max(600, 'Write at most 600 months.');

/** A report as somebody makes it. */
export const afterReportSchema = z.object({
  caseId: caseIdSchema,
  kind: z.enum(AFTER_KINDS, { error: 'Say whether it held or came back.' }),
  months,
});
export type AfterInput = z.infer<typeof afterReportSchema>;

/** The key that goes with a case: 20 letters and digits 2 to 7, however they are spaced. */
export const afterKeySchema = z
  .string()
  .max(60, 'This is longer than any key.')
  .transform((typed) => typed.toLowerCase().replace(/[\s-]+/g, ''))
  .pipe(z.string().regex(/^[a-z2-7]{20}$/, 'A key is 20 letters and digits 2 to 7. Copy it as it was shown.'));

/** An accepted report as everybody sees it. */
export type AfterView = { kind: AfterKind; months: number; source: AfterSource; month: string };

/** A report as the moderators see it. */
export type AfterLine = AfterView & { id: string; caseId: string; status: AfterStatus };

/**
 * How sending went. `key` is the next key, where the last one was used up by it. `refused` names the field.
 */
export type AfterOutcome =
  | { status: 'done'; key: string | null }
  | { status: 'refused'; fields: Partial<Record<'kind' | 'months' | 'key', string>> };
