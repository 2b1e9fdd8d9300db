import { stepCost } from './plan-problem';
import type { PlanMove } from './repair-plan';

/** What a unit answers when it is questioned. */
export type UnitAnswers = {
  /** Outcome of a check, as its value index. */
  check(index: number): number;
  /** Whether a fix cured, and its result as a value index. */
  fix(index: number): { cured: boolean; value: number };
};

/** A step that was taken, with its result as a value index. */
export type StepTaken = { readonly kind: 'check' | 'fix'; readonly index: number; readonly value: number };

/** What is known so far about a unit on the bench; the symptoms stand apart. */
export type BenchState = {
  readonly steps: readonly StepTaken[];
  readonly triedFixes: readonly number[];
  readonly doneChecks: readonly number[];
  readonly minutes: number;
  readonly partCost: number;
};

/** Decides on the next step from what is known. */
export type RepairPolicy = (state: BenchState) => PlanMove;

export type RepairCosts = {
  readonly fixes: readonly { readonly minutes: number; readonly partCost: number }[];
  readonly checks: readonly { readonly minutes: number; readonly partCost?: number }[];
  readonly hourValue: number;
  readonly handOverCost: number;
  /** Once time and parts have cost this much the unit is handed over, whatever the policy says. Default: no cap. */
  readonly spendingCap?: number;
};

export type RepairRun = {
  cured: boolean;
  minutes: number;
  partCost: number;
  /** Time at the hour's value, parts, and the hand-over where it came to that. */
  cost: number;
  steps: StepTaken[];
};

/**
 * Takes one unit through a policy until it is cured or handed over, and adds up what that took. Pure but for what the unit
 * and the policy do. Throws an Error where the policy repeats a step, because that would never end.
 */
export function simulateRepair(unit: UnitAnswers, policy: RepairPolicy, costs: RepairCosts): RepairRun {
  const steps: StepTaken[] = [];
  const triedFixes: number[] = [];
  const doneChecks: number[] = [];
  let minutes = 0;
  let partCost = 0;
  const spent = () => stepCost({ minutes, partCost }, costs.hourValue);
  while (spent() < (costs.spendingCap ?? Infinity)) {
    const move = policy({ steps, triedFixes, doneChecks, minutes, partCost });
    if (move.kind === 'hand-over') break;
    const { kind, index } = move;
    const taken = kind === 'fix' ? triedFixes : doneChecks;
    if (taken.includes(index)) throw new Error(`The policy repeats ${kind} ${index}.`);
    const step = (kind === 'fix' ? costs.fixes : costs.checks)[index];
    if (step === undefined) throw new RangeError(`There is no ${kind} ${index}.`);
    taken.push(index);
    minutes += step.minutes;
    partCost += step.partCost ?? 0;
    if (kind === 'check') {
      steps.push({ kind, index, value: unit.check(index) });
      continue;
    }
    const { cured, value } = unit.fix(index);
    steps.push({ kind, index, value });
    if (cured) return { cured, minutes, partCost, cost: spent(), steps };
  }
  return { cured: false, minutes, partCost, cost: spent() + costs.handOverCost, steps };
}
