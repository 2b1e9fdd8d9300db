import type { SimulatedUnit, World } from '../world';
import type { CasebookModel } from '../../shared/domain/casebook/casebook-model';
import { checkCandidates, poweredDone } from '../../shared/domain/look-up/check-candidates';
import { type CodedQuestion, readQuestion } from '../../shared/domain/look-up/read-question';
import { isHazardous, SAFE_POWER_UP } from '../../shared/domain/look-up/safe-power-up';
import { cureChances } from '../../shared/domain/plan/cure-chances';
import { nextMoveHazardsLater } from '../../shared/domain/plan/hazards-later';
import { partCost, planProblem } from '../../shared/domain/plan/plan-problem';
import type { Finding } from '../../shared/schemas/finding';
import { FIX_RESULTS } from '../../shared/schemas/case';
import { planOptionsSchema } from '../../shared/schemas/plan';
import { questionSchema } from '../../shared/schemas/question';
import { nextChecks } from '../../shared/stats/decide/next-check';
import type { PlanFix } from '../../shared/stats/decide/plan-problem';
import type { PlanMove } from '../../shared/stats/decide/repair-plan';
import { cheapestFirst, type HabitInput, inFixedOrder, mostCommonFirst, mostLikelyFirst } from '../../shared/stats/decide/repair-habits';
import type { BenchState, RepairCosts, RepairPolicy, UnitAnswers } from '../../shared/stats/decide/simulate-repair';
import { type BOUNDS, toldTheCause, toldTheCure } from './bounds';

/** Situations weighed when the plan is made anew after every step; the page weighs more. */
export const REPLAN_EFFORT = 300;

/**
 * The three habits are kindly treated: what they pass over and when they stop goes by the look-up's own probabilities. Without
 * the symptoms they would be no rivals: no fix would seem worth its cost, and nearly every unit would be handed over at once.
 */
export const HABITS = ['most common first', 'cheapest first', 'most likely first'] as const;
/** The same habits of somebody without a look-up, who goes down a list that was set at the outset; the likeliest by the look-up's first answer alone. */
export const PLAIN_HABITS = ['plain most common', 'plain cheapest', 'plain most likely'] as const;
export const ADVICE = ['plan', 'first check', 'suggestions'] as const;
export type PolicyName = (typeof ADVICE)[number] | (typeof HABITS)[number] | (typeof PLAIN_HABITS)[number] | (typeof BOUNDS)[number];

/**
 * `truth` gives the plan the exact beliefs of the world instead of the casebook's; the tables stay the casebook's. With `partsAreFree`
 * plan and habits decide by minutes alone, which is then also what they are measured by. `handOverMinutes` is what handing over is
 * worth, where it is not the page's default.
 */
export type BenchSetting = { model: CasebookModel; effort?: number; truth?: World['truePosterior']; partsAreFree?: boolean; handOverMinutes?: number };

/**
 * A bench on which units of one casebook are repaired. Money in hundredths, the hour and the hand-over at the page's defaults; checks
 * and fixes by their place in the vocabulary.
 */
export function createBench({ model, effort = REPLAN_EFFORT, truth, partsAreFree = false, handOverMinutes }: BenchSetting) {
  const { checks, fixes } = model.coding.vocabulary;
  const usual = planOptionsSchema.parse({});
  const options =
    handOverMinutes === undefined ? usual : { ...usual, handOverCents: Math.round((handOverMinutes / 60) * usual.hourValueCents) };
  const cure = memoised(cureChances(model));
  const planFixes = fixes.map((fix) => ({ cure: cure(fix), minutes: fix.minutes, partCost: partCost(fix), stage: fix.stage }));
  const weighed = (fix: PlanFix): PlanFix => (partsAreFree ? { ...fix, partCost: 0 } : fix);
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

  const trueBelief = (board: string, coded: CodedQuestion): Float64Array | null => {
    if (truth === undefined) return null;
    const stated = coded.read.findings.map(({ kind, id, value }) => ({ kind, id, value }) as Finding);
    const posterior = truth(board, stated);
    return Float64Array.from([...model.coding.causes, ''], (cause) => posterior.get(cause) ?? 0);
  };

  const planMove = (board: string, coded: CodedQuestion): PlanMove => {
    const { problem, bench } = planProblem(model, coded, { ...options, cure });
    const posterior = trueBelief(board, coded) ?? problem.posterior;
    const move = nextMoveHazardsLater(
      { ...problem, fixes: problem.fixes.map(weighed), posterior, effort },
      ({ kind, index }) => isHazardous(kind === 'check' ? bench.checks[index]!.check : bench.fixes[index]!),
    );
    if (move.kind === 'hand-over') return move;
    const { kind, index } = move;
    return { kind, index: kind === 'check' ? checks.indexOf(bench.checks[index]!.check) : fixes.indexOf(bench.fixes[index]!) };
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

  /** One check, the first that the look-up suggests; then the habit. */
  const oneCheckThen = (unit: SimulatedUnit, habit: RepairPolicy): RepairPolicy => {
    let suggested: number | null | undefined;
    return safely(unit, (state) => {
      if (suggested === undefined) suggested = suggestedCheck(ask(unit, state));
      return suggested === null || state.doneChecks.includes(suggested) ? habit(state) : { kind: 'check', index: suggested };
    });
  };

  const policies = (unit: SimulatedUnit): Record<PolicyName, RepairPolicy> => {
    const category = model.words.devices.get(unit.board)!.model.category;
    const device = model.coding.deviceOf(unit.board)!;
    const shut = new Float64Array(model.coding.causes.length + 1);
    const habit: HabitInput = {
      fixes: fixes.map((fix, i) => weighed(fix.categories.includes(category) ? planFixes[i]! : { ...planFixes[i]!, cure: shut })),
      hourValue: costs.hourValue,
      handOverCost: costs.handOverCost,
      prior: model.estimator.prior(device),
      belief: (state) => model.estimator.probabilities(device, ask(unit, state).findings),
    };
    const likeliest = mostLikelyFirst(habit);
    const atOnce = model.estimator.probabilities(device, ask(unit, { steps: [] }).findings);
    return {
      plan: (state) => planMove(unit.board, ask(unit, state)),
      suggestions: (state) => {
        const check = suggestedCheck(ask(unit, state));
        return check === null ? likeliest(state) : { kind: 'check', index: check };
      },
      'most common first': safely(unit, mostCommonFirst(habit)),
      'cheapest first': safely(unit, cheapestFirst(habit)),
      'most likely first': safely(unit, likeliest),
      'plain most common': safely(unit, inFixedOrder({ ...habit, belief: habit.prior }, ({ commonest }) => commonest)),
      'plain cheapest': safely(unit, inFixedOrder({ ...habit, belief: habit.prior }, ({ cost }) => -cost)),
      'plain most likely': safely(unit, inFixedOrder({ ...habit, belief: atOnce }, ({ chance }) => chance)),
      'first check': oneCheckThen(unit, likeliest),
      'told the cause': safely(unit, toldTheCause(unit, habit, model.coding.causeOf)),
      'told the cure': safely(unit, toldTheCure(answers(unit), { ...costs, fixes: planFixes })),
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

  return { vocabulary: model.coding.vocabulary, costs, ask, suggestedCheck, policies, answers };
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
