import { z } from 'zod';
import { fixResultSchema } from './case';
import { slugSchema } from './terms';

/** Anything observed on a unit: a symptom present or absent, a check's outcome, a fix and its result. */
export const findingSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('symptom'), id: slugSchema, value: z.enum(['present', 'absent']) }),
  z.object({ kind: z.literal('check'), id: slugSchema, value: slugSchema }),
  z.object({ kind: z.literal('fix'), id: slugSchema, value: fixResultSchema }),
]);
export type Finding = z.infer<typeof findingSchema>;

/** A finding as read from words: `text` is the span it came from. */
export type ReadFinding = Finding & { label: string; text: string; start: number; end: number };

/** An ambiguous span and the findings that it could mean, best first. */
export type AmbiguousSpan = { text: string; start: number; end: number; choices: (Finding & { label: string })[] };

export type ReadQuery = {
  findings: ReadFinding[];
  /** What could not be read: shown, never dropped. */
  unread: { text: string; start: number; end: number }[];
  ambiguous: AmbiguousSpan[];
  /** Board or model slug mentioned in the words. */
  device: string | null;
};
