import type { PlanOptions, PlanResult, PlanStep } from '../../schemas/plan';
import type { Question } from '../../schemas/question';
import type { PlanProblem } from '../../stats/decide/plan-problem';
import type { PlannedStep, RepairPlan } from '../../stats/decide/repair-plan';
import { countOnDevice, matchingCounts } from '../../stats/matching-counts';
import type { CasebookModel } from '../casebook/casebook-model';
import type { OfferedCheck } from '../look-up/check-candidates';
import { type CodedQuestion, readQuestion } from '../look-up/read-question';
import { isHazardous } from '../look-up/safe-power-up';
import { warningsOn } from '../look-up/warnings';
import { findPlan, type PlanTask } from './hazards-later';
import { type PlanBench, planProblem } from './plan-problem';

const MINUTES_PER_HOUR = 60;

/**
 * The plan of checks and fixes with a low expected cost of repair, for what the user has, can do and what an hour is
 * worth; it ends in stopping or handing over. Fixes already tried count as evidence and are not offered again.
 * @param effort how many situations the search may weigh, where less than usual has to do
 */
export function planRepair(model: CasebookModel, question: Question, options: PlanOptions, effort?: number): PlanResult {
  const { task, inWords } = preparePlan(model, question, options, effort);
  return inWords(findPlan(task));
}

/** The search that a plan needs, which takes most of the time and nothing but numbers, and what puts the plan found into words. */
export type PreparedPlan = { task: PlanTask; inWords: (plan: FoundPlan) => PlanResult };

/** What of a plan is put into words. */
export type FoundPlan = Pick<RepairPlan, 'steps' | 'handOver' | 'expectedMinutes' | 'expectedCost' | 'chanceResolved'>;

/** Everything about `planRepair` but the search itself. */
export function preparePlan(model: CasebookModel, question: Question, options: PlanOptions, effort?: number): PreparedPlan {
  const coded = readQuestion(model, question);
  const { problem, bench } = planProblem(model, coded, options);
  const hazardous = { check: bench.checks.map(({ check }) => isHazardous(check)), fix: bench.fixes.map(isHazardous) };
  return {
    task: { problem: { ...problem, ...(effort !== undefined && { effort }) }, hazardous },
    inWords: (plan) => planInWords(model, { question, options, coded, problem, bench }, plan),
  };
}

type Planned = { question: Question; options: PlanOptions; coded: CodedQuestion; problem: PlanProblem; bench: PlanBench };

function planInWords(model: CasebookModel, { question, options, coded, problem, bench }: Planned, plan: FoundPlan): PlanResult {
  const { total, matching, compatible, causeNotFound } = matchingCounts(model.index, coded.findings);
  const here = countOnDevice(model.index, coded.findings, coded.device);
  return {
    read: coded.read,
    options,
    steps: plan.steps.map((step) => stepInWords(bench, step, options)),
    end: { kind: 'stop-or-hand-over', costCents: plan.handOver.cost, chanceLeft: plan.handOver.chance },
    expectedMinutes: plan.expectedMinutes,
    expectedCostCents: plan.expectedCost,
    chanceResolved: plan.chanceResolved,
    struck: options.struck.map((step) => ({ ...step, label: struckLabel(model, step) })),
    warnings: warningsOn(question, {
      read: coded.read,
      cases: { total, matching, compatible, causeNotFound, onDevice: here.total, matchingOnDevice: here.matching },
      unlisted: { probability: problem.posterior.at(-1) ?? 0, low: 0, high: 1 },
    }),
  };
}

function struckLabel(model: CasebookModel, { kind, id }: PlanOptions['struck'][number]): string {
  return (kind === 'check' ? model.words.checks : model.words.fixes).get(id)?.label ?? id;
}

function entryOf(bench: PlanBench, step: { kind: 'check' | 'fix'; index: number }) {
  const entry = step.kind === 'check' ? bench.checks[step.index]?.check : bench.fixes[step.index];
  if (!entry) throw new Error('The plan names a step that was not on the bench.');
  return entry;
}

function stepInWords(bench: PlanBench, step: PlannedStep, options: PlanOptions): PlanStep {
  const entry = entryOf(bench, step);
  return {
    kind: step.kind,
    id: entry.slug,
    label: entry.label,
    stage: entry.stage,
    minutes: step.minutes,
    costCents: step.partCost,
    cautions: entry.cautions,
    howTo: entry.howTo,
    first: 'first' in entry ? entry.first : null,
    chanceBefore: step.chanceBefore,
    chanceAfter: step.chanceAfter,
    expectedMinutesSoFar: step.expectedMinutesSoFar,
    expectedCostCentsSoFar: step.expectedPartCostSoFar + (step.expectedMinutesSoFar * options.hourValueCents) / MINUTES_PER_HOUR,
    why: whyHere(bench, step),
  };
}

const REASONS: Record<PlannedStep['reason'], string> = {
  'comes-first': 'Safe power-up comes first, whatever it tells about the cause.',
  begins: 'It pays, and it comes before work on the mains side or at high voltage.',
  'saves-more-than-it-costs': 'Its outcome is expected to save more time and money than it takes.',
  'most-chance-for-its-cost': 'Of the fixes left, the best chance of a cure for what it costs.',
  'best-with-what-follows': 'Not the likeliest cure for its cost, but the cheapest way on together with what follows.',
};

function whyHere(bench: PlanBench, step: PlannedStep): string {
  if (step.kind !== 'check') return REASONS[step.reason];
  const { check } = bench.checks[step.index] as OfferedCheck;
  const reason = REASONS[step.reason];
  const shown = step.follows === null ? undefined : check.outcomes[step.follows]?.label.toLowerCase();
  return shown === undefined ? reason : `${reason} The plan goes on as if it shows: ${shown}.`;
}
