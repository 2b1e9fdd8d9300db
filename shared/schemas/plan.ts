import { z } from 'zod';
import type { LookUpResult } from './look-up';
import { instrumentSchema, needSchema, slugSchema, stageSchema, type Hazard, type Stage } from './terms';

/** A plan's step that the user struck out: it's left out and the plan reflows. */
export const struckStepSchema = z.object({ kind: z.enum(['check', 'fix']), id: slugSchema });
export type StruckStep = z.infer<typeof struckStepSchema>;

/** What the user has, can do and what their time is worth. `null` means: everything. */
export const planOptionsSchema = z.object({
  /** What an hour of work is worth, in hundredths of a currency unit. */
  hourValueCents: z.int().min(0).max(1_000_000).default(2_000),
  maxStage: stageSchema.default(4),
  instruments: z.array(instrumentSchema).nullable().default(null),
  /** Working unit, donor and new parts at hand. */
  needs: z.array(needSchema).nullable().default(null),
  /** What it costs to stop, or to hand the unit over, in hundredths of a currency unit. */
  handOverCents: z.int().min(0).max(100_000_000).default(15_000),
  struck: z.array(struckStepSchema).max(60).default([]),
});
export type PlanOptions = z.infer<typeof planOptionsSchema>;

export type PlanStep = {
  kind: 'check' | 'fix';
  id: string;
  label: string;
  stage: Stage;
  /** Minutes of this step alone. */
  minutes: number;
  /** Money of this step alone, without time. */
  costCents: number;
  cautions: Hazard[];
  howTo: string;
  /** What to do before it, in one sentence; null where nothing is needed. */
  first: string | null;
  /** Chance that the unit works before and after this step, following the plan from its start. 0 to 1. */
  chanceBefore: number;
  chanceAfter: number;
  /** Expected minutes and money spent by the end of this step, over units like this one. */
  expectedMinutesSoFar: number;
  expectedCostCentsSoFar: number;
  /** One sentence: why it stands here. */
  why: string;
};

/** An ordered plan of checks and fixes; it always ends in stopping or handing over. */
export type PlanResult = {
  read: LookUpResult['read'];
  options: PlanOptions;
  steps: PlanStep[];
  end: { kind: 'stop-or-hand-over'; costCents: number; chanceLeft: number };
  /** Over the whole plan, ending included; `expectedCostCents` counts time at the hour's value, parts and the ending. */
  expectedMinutes: number;
  expectedCostCents: number;
  chanceResolved: number;
  /** Steps struck out, with their labels, so that each can be put back. */
  struck: (StruckStep & { label: string })[];
  warnings: LookUpResult['warnings'];
};
