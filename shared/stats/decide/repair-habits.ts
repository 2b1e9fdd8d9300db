import { type PlanFix, stepCost } from './plan-problem';
import type { PlanMove } from './repair-plan';
import type { BenchState, RepairPolicy } from './simulate-repair';

export type HabitInput = {
  readonly fixes: readonly PlanFix[];
  readonly hourValue: number;
  readonly handOverCost: number;
  /** Beliefs before anything was seen, failures not counted; the habit of the most common cause goes by these. */
  readonly prior: Float64Array;
  /** Beliefs from the symptoms and from what was tried. */
  readonly belief: (state: BenchState) => Float64Array;
  readonly maxStage?: number;
};

/** Fixes below this chance to cure are not worth a thought to anyone. */
const THINKABLE = 0.01;

/**
 * Tries the fix of the most common cause of this device first, whatever the symptoms, going down the list; for a cause
 * with several fixes, the one most likely to cure it.
 */
export function mostCommonFirst(input: HabitInput): RepairPolicy {
  const byCommonness = [...input.prior.keys()].slice(0, -1).sort((a, b) => input.prior[b]! - input.prior[a]!);
  return habit(input, (state, open) => {
    for (const cause of byCommonness) {
      const known = open.filter(({ index }) => input.fixes[index]!.cure[cause]! > 0);
      // One try per cause, as a habit goes: a cause whose fix failed is crossed off.
      const isCrossedOff = state.triedFixes.some((index) => input.fixes[index]!.cure[cause]! >= 0.5);
      if (known.length > 0 && !isCrossedOff) return best(known, ({ index }) => input.fixes[index]!.cure[cause]!);
    }
    return best(open, ({ chance }) => chance);
  });
}

/** Tries the cheapest fix first among those that are thinkable with these symptoms. */
export function cheapestFirst(input: HabitInput): RepairPolicy {
  return habit(input, (_, open) => best(open, ({ cost }) => -cost));
}

/** Tries what most likely cures, given the symptoms and what has failed so far. */
export function mostLikelyFirst(input: HabitInput): RepairPolicy {
  return habit(input, (_, open) => best(open, ({ chance }) => chance));
}

/** A plain habit's list: the worth of a fix by its chance to cure under the beliefs at the outset and by its cost; highest first. */
export type PlainOrder = (fix: { readonly chance: number; readonly commonest: number; readonly cost: number }) => number;

/**
 * A habit of somebody without a look-up: the order of the fixes is set at the outset and is not changed by what fails, and the
 * unit is handed over once time and parts have cost as much as that, or nothing is left on the list. `belief` is what the order
 * goes by: one probability per cause, the unlisted cause last.
 */
export function inFixedOrder(input: Omit<HabitInput, 'prior' | 'belief'> & { belief: Float64Array }, order: PlainOrder): RepairPolicy {
  const { fixes, hourValue, handOverCost, belief, maxStage = 4 } = input;
  const ranked = fixes
    .map((fix, index) => {
      const chance = cureChance(fix, belief);
      const commonest = fix.cure.reduce((most, share, cause) => (share > 0 ? Math.max(most, belief[cause]!) : most), 0);
      return { index, stage: fix.stage, chance, worth: order({ chance, commonest, cost: stepCost(fix, hourValue) }) };
    })
    .filter(({ chance, stage }) => chance > 0 && stage <= maxStage)
    .sort((a, b) => b.worth - a.worth);
  return (state): PlanMove => {
    const next = ranked.find(({ index }) => !state.triedFixes.includes(index));
    const isSpent = stepCost(state, hourValue) >= handOverCost;
    return next === undefined || isSpent ? { kind: 'hand-over' } : { kind: 'fix', index: next.index };
  };
}

type OpenFix = { index: number; chance: number; cost: number };

/**
 * A habit tries fixes and does no checks. All stop alike, and by the same knowledge: when no thinkable fix is left whose
 * chance to cure, times what handing over costs, outweighs its own cost. Fixes not worth that are passed over, which is
 * kinder to a habit than real life.
 */
function habit(input: HabitInput, choose: (state: BenchState, open: OpenFix[]) => OpenFix): RepairPolicy {
  return (state): PlanMove => {
    const belief = input.belief(state);
    const open: OpenFix[] = [];
    input.fixes.forEach((fix, index) => {
      if (state.triedFixes.includes(index) || fix.stage > (input.maxStage ?? 4)) return;
      const chance = cureChance(fix, belief);
      const cost = stepCost(fix, input.hourValue);
      if (chance >= THINKABLE && chance * input.handOverCost > cost) open.push({ index, chance, cost });
    });
    return open.length === 0 ? { kind: 'hand-over' } : { kind: 'fix', index: choose(state, open).index };
  };
}

function cureChance({ cure }: PlanFix, belief: Float64Array): number {
  return cure.reduce((sum, share, cause) => sum + share * belief[cause]!, 0);
}

function best(open: OpenFix[], worth: (fix: OpenFix) => number): OpenFix {
  return open.reduce((leader, fix) => (worth(fix) > worth(leader) ? fix : leader));
}
