import type { PlanOptions } from '../../schemas/plan';
import type { Fix } from '../../schemas/vocabulary';
import type { PlanProblem } from '../../stats/decide/plan-problem';
import type { CasebookModel } from '../casebook/casebook-model';
import { checkCandidates, type OfferedCheck, poweredDone } from '../look-up/check-candidates';
import type { CodedQuestion } from '../look-up/read-question';
import { SAFE_POWER_UP } from '../look-up/safe-power-up';
import { cureChances } from './cure-chances';

/** Checks and fixes that the plan may use, in the order of the problem's indices. */
export type PlanBench = { checks: OfferedCheck[]; fixes: Fix[] };

/**
 * The problem that a repair plan solves for a question: beliefs from the findings, the checks and fixes that are possible with
 * what the user has and can do, and what they cost. `cure` spares counting the cures again where many plans are made from one
 * model.
 */
export function planProblem(
  model: CasebookModel,
  coded: CodedQuestion,
  options: PlanOptions & { cure?: ReturnType<typeof cureChances> },
): { problem: PlanProblem; bench: PlanBench } {
  const cure = options.cure ?? cureChances(model);
  const bench = benchFor(model, coded, options);
  const place = new Map(bench.checks.map(({ check }, index) => [check.slug, index]));
  const done = new Set(coded.read.findings.filter((f) => f.kind === 'check').map((f) => f.id));
  const problem = {
    posterior: model.estimator.probabilities(coded.device, coded.findings),
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
    firstChecks: poweredDone(model, coded) ? [] : SAFE_POWER_UP.flatMap((slug) => place.get(slug) ?? []),
  };
  return { problem, bench };
}

function benchFor(model: CasebookModel, coded: CodedQuestion, options: PlanOptions): PlanBench {
  const struck = new Set(options.struck.map((s) => `${s.kind} ${s.id}`));
  const tried = new Set(coded.read.findings.filter((f) => f.kind === 'fix').map((f) => f.id));
  const category = model.words.devices.get(coded.read.device?.slug ?? '')?.model.category;
  const checks = checkCandidates(model, coded, options).filter(
    ({ check, candidate }) => candidate.possible && candidate.instrumentsHeld && !struck.has(`check ${check.slug}`),
  );
  const fixes = model.coding.vocabulary.fixes.filter(
    (fix) =>
      !fix.retired &&
      !struck.has(`fix ${fix.slug}`) &&
      !tried.has(fix.slug) &&
      (category === undefined || fix.categories.includes(category)) &&
      fix.stage <= options.maxStage &&
      fix.instruments.every((i) => i === 'none' || options.instruments === null || options.instruments.includes(i)) &&
      fix.needs.every((n) => options.needs === null || options.needs.includes(n)),
  );
  return { checks, fixes };
}

/** The middle of the price range. */
export function partCost(fix: Fix): number {
  return (fix.partCostCents.low + fix.partCostCents.high) / 2;
}
