import type { CaseContent, WorkingUnitRecord } from '../shared/schemas/case';
import type { DeviceCatalogue } from '../shared/schemas/device';
import type { Finding } from '../shared/schemas/finding';
import type { FixResult } from '../shared/schemas/case';
import type { Vocabulary } from '../shared/schemas/vocabulary';

/** Uniform numbers in [0, 1), from a seeded generator. */
export type Random = () => number;

/** One invented unit with a hidden cause, that can be questioned like a real one. */
export type SimulatedUnit = {
  board: string;
  /** Slug of the true cause. */
  cause: string;
  /** What the owner sees: every symptom that can be observed, present or absent; hidden ones are left out. */
  symptoms: { symptom: string; present: boolean }[];
  /** Outcome of a check, misreadings included; the same check asked twice answers the same. */
  check(slug: string): string;
  /** Result of a fix tried; a bad donor fails in the same way when tried again. */
  fix(slug: string): FixResult;
};

/** A written fault model and what can be drawn from it. */
export type World = {
  name: string;
  vocabulary: Vocabulary;
  catalogue: DeviceCatalogue;
  /** P(cause | board) before anything was seen. */
  prior(board: string): Map<string, number>;
  /** Exact P(cause | findings, board) under the written model; not-recorded findings are marginalised. */
  truePosterior(board: string, findings: readonly Finding[]): Map<string, number>;
  drawUnit(random: Random, board: string): SimulatedUnit;
  /** `count` accepted cases, with what really was wrong beside each. */
  drawCases(seed: number, count: number): { content: CaseContent; board: string; trueCause: string }[];
  drawWorkingUnits(seed: number, count: number): Omit<WorkingUnitRecord, 'id'>[];
};
