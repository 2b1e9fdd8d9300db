import { type CheckCandidate, nextChecks } from './next-check';
import type { PlanProblem } from './plan-problem';
import { nextStep } from './repair-plan';
import type { BenchState, RepairPolicy } from './simulate-repair';
import { mostLikelyFirst, type HabitInput } from './repair-habits';

/**
 * Follows the repair plan, made anew after every step. `situation` gives the beliefs and, where they change with the
 * evidence, the tables, as they stand; what was tried and done is filled in here.
 */
export function followPlan(situation: (state: BenchState) => PlanProblem): RepairPolicy {
  return (state) => nextStep({ ...situation(state), triedFixes: state.triedFixes, doneChecks: state.doneChecks });
}

/**
 * Does the first suggested check until a cause is proved enough or no check pays, then tries what most likely cures. Cost
 * is not weighed, so it is no plan; it shows what the suggestions alone are worth. `candidates` gives all checks by index,
 * as they stand; those done are left out here.
 */
export function followSuggestions(
  input: HabitInput & {
    candidates: (state: BenchState) => readonly CheckCandidate[];
    poweredDone: (state: BenchState) => boolean;
  },
): RepairPolicy {
  const fix = mostLikelyFirst(input);
  return (state) => {
    const all = input.candidates(state);
    const open = [...all.keys()].filter(
      (index) => !state.doneChecks.includes(index) && all[index]!.stage <= (input.maxStage ?? 4),
    );
    const { offered } = nextChecks({
      posterior: input.belief(state),
      candidates: open.map((index) => all[index]!),
      poweredDone: input.poweredDone(state),
    });
    return offered.length > 0 ? { kind: 'check', index: open[offered[0]!.candidate]! } : fix(state);
  };
}
