import type { SimulatedUnit } from '../../seed/world';
import type { CasebookModel } from '../../shared/domain/casebook/casebook-model';
import { checkCandidates, poweredDone } from '../../shared/domain/look-up/check-candidates';
import { type CodedQuestion, readQuestion } from '../../shared/domain/look-up/read-question';
import { isHazardous, SAFE_POWER_UP } from '../../shared/domain/look-up/safe-power-up';
import { cureChances } from '../../shared/domain/plan/cure-chances';
import { planHazardsLater } from '../../shared/domain/plan/hazards-later';
import { partCost, planProblem } from '../../shared/domain/plan/plan-problem';
import type { Finding } from '../../shared/schemas/finding';
import { FIX_RESULTS } from '../../shared/schemas/case';
import { planOptionsSchema } from '../../shared/schemas/plan';
import { questionSchema } from '../../shared/schemas/question';
import { nextChecks } from '../../shared/stats/decide/next-check';
import type { PlanMove } from '../../shared/stats/decide/repair-plan';
import { cheapestFirst, type HabitInput, mostCommonFirst, mostLikelyFirst } from '../../shared/stats/decide/repair-habits';
import type { BenchState, RepairCosts, RepairPolicy, UnitAnswers } from '../../shared/stats/decide/simulate-repair';

/** Situations weighed when the plan is made anew after every step; the page weighs more. */
export const REPLAN_EFFORT = 300;

export type PolicyName = 'plan' | 'suggestions' | 'most common first' | 'cheapest first' | 'most likely first';
export const HABITS = ['most common first', 'cheapest first', 'most likely first'] as const;

export type BenchSetting = { model: CasebookModel; effort?: number };

/**
 * A bench on which units of one casebook are repaired. Money in hundredths, the hour and the hand-over at the page's defaults; checks
 * and fixes by their place in the vocabulary.
 */
export function createBench({ model, effort = REPLAN_EFFORT }: BenchSetting) {
  const { checks, fixes } = model.coding.vocabulary;
  const options = planOptionsSchema.parse({});
  const cure = memoised(cureChances(model));
  const planFixes = fixes.map((fix) => ({ cure: cure(fix), minutes: fix.minutes, partCost: partCost(fix), stage: fix.stage }));
  const costs: RepairCosts = { fixes: planFixes, checks, hourValue: options.hourValueCents, handOverCost: options.handOverCents };

  const ask = (unit: SimulatedUnit, state: Pick<BenchState, 'steps'>): CodedQuestion => {
    const symptoms: Finding[] = unit.symptoms.map(({ symptom, present }) => ({
      kind: 'symptom',
      id: symptom,
      value: present ? 'present' : 'absent',
    }));
    const done = state.steps.map(
      ({ kind, index, value }): Finding =>
        kind === 'check'
          ? { kind, id: checks[index]!.slug, value: checks[index]!.outcomes[value]!.slug }
          : { kind, id: fixes[index]!.slug, value: FIX_RESULTS[value]! },
    );
    const question = { ...questionSchema.parse({ device: unit.board, complete: true }), set: [...symptoms, ...done] };
    return readQuestion(model, question);
  };

  const planMove = (coded: CodedQuestion): PlanMove => {
    const { problem, bench } = planProblem(model, coded, { ...options, cure });
    const plan = planHazardsLater({ ...problem, effort }, ({ kind, index }) =>
      isHazardous(kind === 'check' ? bench.checks[index]!.check : bench.fixes[index]!),
    );
    const step = plan.steps[0];
    if (step === undefined) return { kind: 'hand-over' };
    const index =
      step.kind === 'check' ? checks.indexOf(bench.checks[step.index]!.check) : fixes.indexOf(bench.fixes[step.index]!);
    return { kind: step.kind, index };
  };

  /** The check that the look-up suggests first, as its place in the vocabulary, or null. */
  const suggestedCheck = (coded: CodedQuestion): number | null => {
    const offered = checkCandidates(model, coded);
    const posterior = model.estimator.probabilities(coded.device, coded.findings);
    const ranked = nextChecks({ posterior, candidates: offered.map((o) => o.candidate), poweredDone: poweredDone(model, coded) });
    const entries = ranked.offered.map(({ candidate }) => offered[candidate]!.check);
    const first = entries.find((check) => !isHazardous(check)) ?? entries[0];
    return first === undefined ? null : checks.indexOf(first);
  };

  /** Safe power-up first, which the plan and the suggestions ask of everybody: a habit has to power the unit just as well. */
  const safely = (unit: SimulatedUnit, habit: RepairPolicy): RepairPolicy => {
    const possible = checkCandidates(model, ask(unit, { steps: [] })).filter(({ candidate }) => candidate.possible);
    const first = SAFE_POWER_UP.flatMap((slug) => possible.filter(({ check }) => check.slug === slug)).map(({ check }) =>
      checks.indexOf(check),
    );
    return (state) => {
      const open = first.find((index) => !state.doneChecks.includes(index));
      return open === undefined ? habit(state) : { kind: 'check', index: open };
    };
  };

  const policies = (unit: SimulatedUnit): Record<PolicyName, RepairPolicy> => {
    const category = model.words.devices.get(unit.board)!.model.category;
    const device = model.coding.deviceOf(unit.board)!;
    const shut = new Float64Array(model.coding.causes.length + 1);
    const habit: HabitInput = {
      fixes: fixes.map((fix, i) => (fix.categories.includes(category) ? planFixes[i]! : { ...planFixes[i]!, cure: shut })),
      hourValue: costs.hourValue,
      handOverCost: costs.handOverCost,
      prior: model.estimator.prior(device),
      belief: (state) => model.estimator.probabilities(device, ask(unit, state).findings),
    };
    const likeliest = mostLikelyFirst(habit);
    return {
      plan: (state) => planMove(ask(unit, state)),
      suggestions: (state) => {
        const check = suggestedCheck(ask(unit, state));
        return check === null ? likeliest(state) : { kind: 'check', index: check };
      },
      'most common first': safely(unit, mostCommonFirst(habit)),
      'cheapest first': safely(unit, cheapestFirst(habit)),
      'most likely first': safely(unit, likeliest),
    };
  };

  const answers = (unit: SimulatedUnit): UnitAnswers => ({
    check: (index) => {
      const { slug, outcomes, workingOutcome } = checks[index]!;
      const outcome = answerOr(workingOutcome, () => unit.check(slug));
      return outcomes.findIndex((other) => other.slug === outcome);
    },
    fix: (index) => {
      const result = answerOr('no-change', () => unit.fix(fixes[index]!.slug));
      return { cured: result === 'cured', value: FIX_RESULTS.indexOf(result) };
    },
  });

  return { costs, ask, suggestedCheck, policies, answers };
}

/** Tries at what the board does not have cost their time and change nothing. */
function answerOr<T>(otherwise: T, answer: () => T): T {
  try {
    return answer();
  } catch (error) {
    if (error instanceof Error && / has no /.test(error.message)) return otherwise;
    throw error;
  }
}

function memoised<K extends object, V>(make: (key: K) => V): (key: K) => V {
  const made = new Map<K, V>();
  return (key) => {
    if (!made.has(key)) made.set(key, make(key));
    return made.get(key)!;
  };
}
