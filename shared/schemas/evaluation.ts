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
  byDevice: z.array(groupSchema).default([]),
  byCause: z.array(groupSchema).default([]),
});
export type EvaluationView = z.output<typeof evaluationSchema>;
export type BracketBinView = z.output<typeof bracketBinSchema>;
