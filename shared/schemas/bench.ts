import { z } from 'zod';
import { caseIdSchema, fixResultSchema, readingSchema } from './case';
import { slugSchema } from './terms';

/** Largest numbers and lengths of a bench log; the page and the procedure share them. */
export const BENCH_LIMITS = { units: 50, entries: 2_000, atOnce: 300, label: 60, note: 2_000, short: 40, fixesAtOnce: 8 } as const;

const text = (length: number) => z.string().max(length, `Keep this under ${length + 1} characters.`);

/** What one entry of a bench log says. Numbers are as they were typed, pins as they were read. */
export const entryBodySchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('symptom'), symptom: slugSchema, present: z.boolean() }),
  z.object({
    kind: z.literal('check'),
    check: slugSchema,
    outcome: slugSchema,
    designator: text(BENCH_LIMITS.short),
    reading: text(BENCH_LIMITS.short),
  }),
  z.object({
    kind: z.literal('fix'),
    fixes: z
      .array(z.object({ fix: slugSchema, designator: text(BENCH_LIMITS.short) }))
      .min(1)
      .max(BENCH_LIMITS.fixesAtOnce),
    result: fixResultSchema,
  }),
  z.object({ kind: z.literal('note'), text: text(BENCH_LIMITS.note) }),
  z.object({ kind: z.literal('pin'), reading: readingSchema }),
  /** A check of the checklist after the repair. */
  z.object({ kind: z.literal('after'), check: slugSchema, passed: z.boolean() }),
  z.object({ kind: z.literal('soak'), minutes: z.int().min(0).max(100_000) }),
]);
export type EntryBody = z.infer<typeof entryBodySchema>;

/**
 * Every record of a log is append-only: an edit is a new revision of the same id, a deletion is a revision that says so.
 * `clock` counts up past every revision that its writer had seen (L. Lamport, "Time, clocks, and the ordering of events in
 * a distributed system", Communications of the ACM 21, 1978); `by` is a random name of the browser that wrote it.
 */
const revision = { clock: z.int().min(1).max(1_000_000_000), by: caseIdSchema, deleted: z.boolean() };

/** Milliseconds since 1970, as the clock of the bench had it. */
const moment = z.int().min(0).max(9_999_999_999_999);

/** One unit on the bench. Its label is for its owner alone. */
export const benchUnitSchema = z.object({
  id: caseIdSchema,
  at: moment,
  device: slugSchema,
  label: text(BENCH_LIMITS.label),
  /** "That is all I see": an unlisted symptom is absent. */
  complete: z.boolean(),
  /** A log of a working unit: readings only. */
  working: z.boolean(),
  /** When it was posted or put away; null while it is open. */
  closedAt: moment.nullable(),
  ...revision,
});
export type BenchUnit = z.infer<typeof benchUnitSchema>;

export const benchEntrySchema = z.object({ id: caseIdSchema, unitId: caseIdSchema, at: moment, body: entryBodySchema, ...revision });
export type BenchEntry = z.infer<typeof benchEntrySchema>;

export const benchSyncSchema = z.object({
  units: z.array(benchUnitSchema).max(BENCH_LIMITS.units),
  entries: z.array(benchEntrySchema).max(BENCH_LIMITS.atOnce),
  /** What the server had said last; 0 for everything. */
  since: z.int().min(0),
});
export type BenchSync = z.infer<typeof benchSyncSchema>;

