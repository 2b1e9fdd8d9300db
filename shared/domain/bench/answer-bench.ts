import type { LookUpResult, NextCheck } from '../../schemas/look-up';
import type { PlanOptions, PlanResult } from '../../schemas/plan';
import { questionSchema } from '../../schemas/question';
import type { Finding } from '../../schemas/finding';
import { countOnDevice, matchingCounts } from '../../stats/matching-counts';
import type { CasebookModel } from '../casebook/casebook-model';
import { type DesignatorShare, designatorSplit } from '../casebook/designator-split';
import { causeName } from '../look-up/explain-cause';
import { nextCheckRows } from '../look-up/next-check-rows';
import { type CodedQuestion, readQuestion } from '../look-up/read-question';
import { planRepair } from '../plan/plan-repair';

/** What a bench log asks: everything found so far on one device. */
export type BenchQuestion = { device: string; complete: boolean; findings: readonly Finding[] };

export type BenchCause = {
  id: string;
  label: string;
  probability: number;
  /** 90 % interval; null while it is still being reckoned. */
  interval: { low: number; high: number } | null;
  /** Whole records with this cause among those that carry all findings. */
  matching: number;
  designators: DesignatorShare[];
};

export type BenchAnswer = {
  /** The likeliest causes, at most `SHOWN`; then the share of a cause on no record. */
  causes: BenchCause[];
  unlisted: Pick<BenchCause, 'probability' | 'interval'>;
  cases: Pick<LookUpResult['cases'], 'total' | 'matching' | 'onDevice' | 'matchingOnDevice'>;
  nextChecks: NextCheck[];
  note: string | null;
};

/** Causes that a bench shows. */
const SHOWN = 8;

/** A question of a bench log as the statistics take it. */
export function benchQuestion(model: CasebookModel, { device, complete, findings }: BenchQuestion): CodedQuestion {
  return readQuestion(model, questionSchema.parse({ device, complete, set: findings.slice(-80) }));
}

/** Likely causes and next checks at once, without the intervals, which take longest. */
export function answerBench(model: CasebookModel, question: CodedQuestion): BenchAnswer {
  const probability = model.estimator.probabilities(question.device, question.findings);
  const counts = matchingCounts(model.index, question.findings);
  const here = countOnDevice(model.index, question.findings, question.device);
  const listed = model.coding.causes.length;
  const order = Array.from({ length: listed }, (_, cause) => cause)
    .filter((cause) => (probability[cause] as number) > 0)
    .sort((a, b) => (probability[b] as number) - (probability[a] as number) || a - b);
  const board = question.read.device?.level === 'board' ? question.read.device.slug : null;
  const { nextChecks, note } = nextCheckRows(model, question, probability);
  return {
    causes: order.slice(0, SHOWN).map((cause) => {
      const { id, label } = causeName(model, cause);
      return {
        id,
        label,
        probability: probability[cause] as number,
        interval: null,
        matching: counts.byCause.matching[cause] as number,
        designators: board === null ? [] : designatorSplit(model, board, id),
      };
    }),
    unlisted: { probability: probability[listed] as number, interval: null },
    cases: { total: counts.total, matching: counts.matching, onDevice: here.total, matchingOnDevice: here.matching },
    nextChecks,
    note,
  };
}

/** The same answer with its intervals. */
export function withIntervals(model: CasebookModel, question: CodedQuestion, answer: BenchAnswer): BenchAnswer {
  const { low, high } = model.estimator.posterior(question.device, question.findings);
  const of = (cause: number) => ({ low: low[cause] as number, high: high[cause] as number });
  return {
    ...answer,
    causes: answer.causes.map((cause) => ({ ...cause, interval: of(model.coding.causeOf(cause.id) as number) })),
    unlisted: { ...answer.unlisted, interval: of(model.coding.causes.length) },
  };
}

/** Situations that the first plan weighs: a plan to go on with at once, a tenth dearer than the one that follows it. */
export const FIRST_EFFORT = 100;

/** The repair plan for everything found so far. */
export function planBench(model: CasebookModel, question: BenchQuestion, options: PlanOptions, effort?: number): PlanResult {
  const { device, complete, findings } = question;
  return planRepair(model, questionSchema.parse({ device, complete, set: findings.slice(-80) }), options, effort);
}
