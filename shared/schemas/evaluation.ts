import { z } from 'zod';

const scoresSchema = z.object({
  estimator: z.string(),
  accuracy: z.number(),
  top3: z.number(),
  logLoss: z.number(),
  brier: z.number(),
  ece: z.number(),
});

const bracketBinSchema = z.object({
  low: z.number(),
  high: z.number(),
  count: z.number(),
  stated: z.number(),
  bracketLow: z.number(),
  bracketHigh: z.number(),
  observed: z.number(),
});

const groupSchema = z.object({ label: z.string().default(''), count: z.number(), accuracy: z.number(), logLoss: z.number() });

const estimateSchema = z.object({ mean: z.number(), error: z.number() });

/** Invented units taken through advice and habits. Minutes count the hand-over; errors are standard errors over units. */
export const repairSummarySchema = z.object({
  units: z.number(),
  handOverMinutes: z.number(),
  policies: z.array(
    z.object({
      policy: z.string(),
      minutes: estimateSchema,
      benchMinutes: z.number(),
      allIn: z.number(),
      repaired: z.number(),
      steps: z.number(),
    }),
  ),
  /** Minutes of the advice over those of the habit, and in what share of the units it took fewer. */
  ratios: z.array(z.object({ policy: z.string(), habit: z.string(), minutes: estimateSchema, allIn: z.number(), fewer: z.number() })),
});
export type RepairSummary = z.output<typeof repairSummarySchema>;

/** Against the exact probabilities of the invented world that the cases come from: per cut and estimator. */
const knownTruthSchema = z.object({
  cuts: z.array(
    z.object({
      cut: z.string(),
      results: z.array(z.object({ estimator: z.string(), excessLogLoss: z.number(), covered: z.number(), width: z.number() })),
    }),
  ),
  repairs: repairSummarySchema.nullable(),
});

/** An evaluation of the casebook as it is kept; what older ones lack is null or empty. Shares 0 to 1, log loss in nats. */
export const evaluationSchema = z.object({
  rows: z.number(),
  folds: z.number(),
  repeats: z.number(),
  fitRecords: z.number().nullable().default(null),
  cuts: z.array(z.object({ cut: z.string(), results: z.array(scoresSchema) })),
  brackets: z
    .object({ pairs: z.number(), held: z.number(), width: z.number(), bins: z.array(bracketBinSchema) })
    .nullable()
    .default(null),
  knownTruth: knownTruthSchema.nullable().default(null),
  byDevice: z.array(groupSchema).default([]),
  byCause: z.array(groupSchema).default([]),
});
export type EvaluationView = z.output<typeof evaluationSchema>;
export type BracketBinView = z.output<typeof bracketBinSchema>;
