import { z } from 'zod';

/** So many of so many cases, with the 90 % interval of the share. With none to count in, the interval is 0 to 1. */
export const countedShareSchema = z.object({
  count: z.int().min(0).describe('Cases that have it.'),
  of: z.int().min(0).describe('Cases that were counted in.'),
  low: z.number().min(0).max(1).describe('Lower end of the 90 % interval of the share.'),
  high: z.number().min(0).max(1).describe('Upper end of the 90 % interval of the share.'),
});
export type CountedShare = z.infer<typeof countedShareSchema>;

/** Something with a page of its own. */
export const namedSchema = z.object({ id: z.string(), label: z.string() });
export type Named = z.infer<typeof namedSchema>;

/** Something, and how often. */
export const namedShareSchema = namedSchema.extend(countedShareSchema.shape);
export type NamedShare = z.infer<typeof namedShareSchema>;

/** A cause, the part that it is about, and how often. */
export const causeShareSchema = namedShareSchema.extend({ role: namedSchema });
export type CauseShare = z.infer<typeof causeShareSchema>;

/** Cases of one month, months without a case included. */
export const monthCountSchema = z.object({ month: z.string().describe('YYYY-MM'), count: z.int().min(0) });
export type MonthCount = z.infer<typeof monthCountSchema>;

/** How often a fix was tried and what came of it, with the 90 % interval of the share cured. */
export const fixRecordSchema = namedSchema.extend({
  tried: z.int().min(0),
  resolved: z.int().min(0).describe('Tries that cured.'),
  partly: z.int().min(0),
  noChange: z.int().min(0),
  madeWorse: z.int().min(0),
  cameBack: z.int().min(0).describe('Cures after which the fault came back, by a later report.'),
  low: z.number().min(0).max(1).describe('Lower end of the 90 % interval of the share cured.'),
  high: z.number().min(0).max(1).describe('Upper end of the 90 % interval of the share cured.'),
  estimate: z.number().min(0).max(1).describe('Share cured, drawn toward related devices where tries are few.'),
});
export type FixRecord = z.infer<typeof fixRecordSchema>;

/** What goes with what: `counts[row][column]` cases have both. */
export const crossTableSchema = z.object({
  rows: z.array(namedSchema.extend({ total: z.int().min(0) })),
  columns: z.array(namedSchema.extend({ total: z.int().min(0) })),
  counts: z.array(z.array(z.int().min(0))),
});
export type CrossTable = z.infer<typeof crossTableSchema>;
