import type { PlanOptions, PlanResult, PlanStep } from '../../schemas/plan';
import type { Question } from '../../schemas/question';
import type { Fix } from '../../schemas/vocabulary';
import type { PlanProblem } from '../../stats/decide/plan-problem';
import type { PlannedStep } from '../../stats/decide/repair-plan';
import { matchingCounts } from '../../stats/matching-counts';
import type { CasebookModel } from '../casebook/casebook-model';
import { checkCandidates, type OfferedCheck, poweredDone } from '../look-up/check-candidates';
import { type CodedQuestion, readQuestion } from '../look-up/read-question';
import { isHazardous, SAFE_POWER_UP } from '../look-up/safe-power-up';
import { warningsOn } from '../look-up/warnings';
import { cureChances } from './cure-chances';
import { planHazardsLater } from './hazards-later';

const MINUTES_PER_HOUR = 60;

/** Checks and fixes that the plan may use, in the order of the problem's indices. */
type Bench = { checks: OfferedCheck[]; fixes: Fix[] };

/**
 * The plan of checks and fixes with a low expected cost of repair, for what the user has, can do and what an hour is
 * worth; it ends in stopping or handing over. Fixes already tried count as evidence and are not offered again.
 */
export function planRepair(model: CasebookModel, question: Question, options: PlanOptions): PlanResult {
  const coded = readQuestion(model, question);
  const posterior = model.estimator.probabilities(coded.device, coded.findings);
  const bench = benchFor(model, coded, options);
  const problem = problemFor(model, { coded, posterior, bench, options });
  const plan = planHazardsLater(problem, (step) => isHazardous(entryOf(bench, step)));
  const { total, matching, compatible, causeNotFound } = matchingCounts(model.index, coded.findings);
  const here = matchingCounts(model.index, coded.findings, coded.device);
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
      unlisted: { probability: posterior.at(-1) ?? 0, low: 0, high: 1 },
    }),
  };
}

function struckLabel(model: CasebookModel, { kind, id }: PlanOptions['struck'][number]): string {
  return (kind === 'check' ? model.words.checks : model.words.fixes).get(id)?.label ?? id;
}

function benchFor(model: CasebookModel, coded: CodedQuestion, options: PlanOptions): Bench {
  const struck = new Set(options.struck.map((s) => `${s.kind} ${s.id}`));
  const tried = new Set(coded.read.findings.filter((f) => f.kind === 'fix').map((f) => f.id));
  const category = model.words.devices.get(coded.read.device?.slug ?? '')?.model.category;
  const checks = checkCandidates(model, coded, options).filter(
    ({ check, candidate }) => candidate.possible && candidate.instrumentsHeld && !struck.has(`check ${check.slug}`),
  );
  const fixes = model.coding.vocabulary.fixes.filter(
    (fix) =>
      !struck.has(`fix ${fix.slug}`) &&
      !tried.has(fix.slug) &&
      (category === undefined || fix.categories.includes(category)) &&
      fix.stage <= options.maxStage &&
      fix.instruments.every((i) => i === 'none' || options.instruments === null || options.instruments.includes(i)) &&
      fix.needs.every((n) => options.needs === null || options.needs.includes(n)),
  );
  return { checks, fixes };
}

type ProblemInput = { coded: CodedQuestion; posterior: Float64Array; bench: Bench; options: PlanOptions };

function problemFor(model: CasebookModel, { coded, posterior, bench, options }: ProblemInput): PlanProblem {
  const cure = cureChances(model);
  const place = new Map(bench.checks.map(({ check }, index) => [check.slug, index]));
  const done = new Set(coded.read.findings.filter((f) => f.kind === 'check').map((f) => f.id));
  const first = poweredDone(model, coded) ? [] : SAFE_POWER_UP.flatMap((slug) => place.get(slug) ?? []);
  return {
    posterior,
    fixes: bench.fixes.map((fix) => ({ cure: cure(fix), minutes: fix.minutes, partCost: partCost(fix), stage: fix.stage })),
    checks: bench.checks.map(({ check, candidate }) => ({
      table: candidate.table,
      values: candidate.values,
      weight: candidate.weight,
      minutes: check.minutes,
      stage: check.stage,
      prerequisites: candidate.prerequisitesMet
        ? []
        : check.prerequisites.filter((slug) => !done.has(slug)).flatMap((slug) => place.get(slug) ?? []),
    })),
    hourValue: options.hourValueCents,
    handOverCost: options.handOverCents,
    maxStage: options.maxStage,
    firstChecks: first,
  };
}

/** The middle of the price range. */
function partCost(fix: Fix): number {
  return (fix.partCostCents.low + fix.partCostCents.high) / 2;
}

function entryOf(bench: Bench, step: { kind: 'check' | 'fix'; index: number }) {
  const entry = step.kind === 'check' ? bench.checks[step.index]?.check : bench.fixes[step.index];
  if (!entry) throw new Error('The plan names a step that was not on the bench.');
  return entry;
}

function stepInWords(bench: Bench, step: PlannedStep, options: PlanOptions): PlanStep {
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
  'saves-more-than-it-costs': 'Its outcome is expected to save more time and money than it takes.',
  'most-chance-for-its-cost': 'Of the fixes left, the best chance of a cure for what it costs.',
  'best-with-what-follows': 'Not the likeliest cure for its cost, but the cheapest way on together with what follows.',
};

function whyHere(bench: Bench, step: PlannedStep): string {
  if (step.kind !== 'check') return REASONS[step.reason];
  const { check } = bench.checks[step.index] as OfferedCheck;
  const reason = REASONS[step.reason];
  const shown = step.follows === null ? undefined : check.outcomes[step.follows]?.label.toLowerCase();
  return shown === undefined ? reason : `${reason} The plan goes on as if it shows: ${shown}.`;
}
