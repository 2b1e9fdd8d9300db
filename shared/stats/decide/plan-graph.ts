import { fixSequencer } from './fix-sequence';
import type { ReadyCheck, ReadyFix, ReadyProblem } from './plan-problem';

/** An outcome less likely than this, or a failure this unlikely, is not followed. */
const NEGLIGIBLE = 1e-12;

/** How many fixes and checks are weighed in the first situation, and in each later one: the best by their rate. */
const WEIGHED_FIRST = { fixes: 12, checks: 16 };
const WEIGHED_LATER = { fixes: 3, checks: 4 };

/** Causes believed less than this do not count in the rating of checks; they do in everything else. */
const RATED_BELIEF = 1e-4;

/** A situation: what was tried and seen, and the beliefs that follow from it. */
export type Situation = {
  readonly key: string;
  readonly belief: Float64Array;
  readonly tried: Uint8Array;
  readonly done: Uint8Array;
  /** Cost of a plan that is known from here; falls as the search goes on. */
  value: number;
  /** No plan costs less, at weight 1: each unit's cause is known for nothing. */
  readonly floor: number;
  /** Cost of the best sequence of fixes alone; infinite while a check is due first. */
  readonly fixesOnly: number;
  branches: Branch[] | null;
  /** How deep, and how broadly, it was searched. */
  depth: number;
  width: number;
};

/** One step and where it can lead. */
export type Branch = {
  readonly kind: 'fix' | 'check';
  /** Position in the ready fixes or checks. */
  readonly position: number;
  readonly cost: number;
  /** For a check the outcome of each way on; for a fix the one way is that it did not cure. */
  readonly ways: readonly { readonly outcome: number; readonly chance: number; readonly to: Situation }[];
};

export type PlanGraph = {
  readonly problem: ReadyProblem;
  readonly root: Situation;
  /** Situations made so far. */
  size(): number;
  /** Weighs the steps that are open in a situation, once. */
  expand(situation: Situation): Branch[];
  /** Carries what was learnt about later situations back to all earlier ones, so that every value is that of its plan. */
  settleAll(): void;
  /** The step to take, or null for handing over; makes the situations it leads to. */
  step(situation: Situation): Branch | null;
};

/** Expected cost of taking a step and then following what is known. */
export function branchCost(branch: Branch): number {
  let cost = branch.cost;
  for (const way of branch.ways) cost += way.chance * way.to.value;
  return cost;
}

/** Brings a situation's value down to its cheapest branch. Values never rise. */
export function settle(situation: Situation): void {
  for (const branch of situation.branches ?? []) situation.value = Math.min(situation.value, branchCost(branch));
}

/**
 * The situations that can be reached from a problem's start. Beliefs depend on what was tried and seen, not on its order,
 * so that situations reached by several ways are one.
 */
export function planGraph(problem: ReadyProblem): PlanGraph {
  const { fixes, checks, handOverCost } = problem;
  const sequenceCost = fixSequencer(problem);
  const cheapest = knownCauseCosts(problem);
  const situations = new Map<string, Situation>();
  /** Situations with branches, by the number of steps that lead to them. */
  const expanded: Situation[][] = [];
  const codeStarts: number[] = [];
  let nextCode = 0x100 + fixes.length;
  for (const check of checks) {
    codeStarts.push(nextCode);
    nextCode += check.values;
  }

  const situation = (key: string, belief: Float64Array, tried: Uint8Array, done: Uint8Array): Situation => {
    let floor = 0;
    for (let cause = 0; cause < belief.length; cause++) floor += belief[cause]! * cheapest[cause]!;
    const due = problem.first.some((check) => !done[check]);
    const fixesOnly = due ? Infinity : sequenceCost(belief, tried);
    const made = { key, belief, tried, done, floor, fixesOnly, value: fixesOnly, branches: null, depth: 0, width: 0 };
    situations.set(key, made);
    return made;
  };

  const afterFailure = (from: Situation, position: number): Branch => {
    const fix = fixes[position]!;
    const cured = cureChance(fix, from.belief);
    const branch = { kind: 'fix' as const, position, cost: fix.cost };
    if (1 - cured <= NEGLIGIBLE) return { ...branch, ways: [] };
    const key = insertCode(from.key, 0x100 + position);
    let to = situations.get(key);
    if (to === undefined) {
      const belief = from.belief.slice();
      for (let entry = 0; entry < fix.causes.length; entry++) belief[fix.causes[entry]!]! *= 1 - fix.cure[entry]!;
      to = situation(key, normalise(belief), withMark(from.tried, position), from.done);
    }
    return { ...branch, ways: [{ outcome: 0, chance: 1 - cured, to }] };
  };

  const afterCheck = (from: Situation, position: number): Branch => {
    const check = checks[position]!;
    const chances = outcomeChances(from.belief, check);
    const ways: { outcome: number; chance: number; to: Situation }[] = [];
    let done: Uint8Array | null = null;
    for (let outcome = 0; outcome < check.values; outcome++) {
      if (chances[outcome]! <= NEGLIGIBLE) continue;
      const key = insertCode(from.key, codeStarts[position]! + outcome);
      done ??= withMark(from.done, position);
      const to = situations.get(key) ?? situation(key, seen(from.belief, check, outcome), from.tried, done);
      ways.push({ outcome, chance: chances[outcome]!, to });
    }
    return { kind: 'check', position, cost: check.cost, ways };
  };

  const expand = (from: Situation): Branch[] => {
    if (from.branches) return from.branches;
    const due = problem.first.find((check) => !from.done[check]);
    if (due !== undefined) {
      from.branches = [afterCheck(from, due)];
    } else {
      const weighed = from.key === '' ? WEIGHED_FIRST : WEIGHED_LATER;
      const fixesOpen = openFixes(problem, from).slice(0, weighed.fixes);
      const checksOpen = openChecks(problem, from).slice(0, weighed.checks);
      from.branches = [
        ...fixesOpen.map((position) => afterFailure(from, position)),
        ...checksOpen.map((position) => afterCheck(from, position)),
      ];
    }
    settle(from);
    const steps = from.key.length;
    expanded[steps] ??= [];
    expanded[steps].push(from);
    return from.branches;
  };

  const settleAll = (): void => {
    for (let steps = expanded.length - 1; steps >= 0; steps--) expanded[steps]?.forEach(settle);
  };

  const step = (from: Situation): Branch | null => {
    let best: Branch | null = null;
    let least = from.fixesOnly * (1 - 1e-12);
    for (const branch of from.branches ?? []) {
      const cost = branchCost(branch);
      if (cost < least) {
        least = cost;
        best = branch;
      }
    }
    if (best !== null || from.fixesOnly >= handOverCost) return best;
    const order: number[] = [];
    sequenceCost(from.belief, from.tried, order);
    return order.length === 0 ? null : afterFailure(from, order[0]!);
  };

  const root = situation('', problem.posterior, new Uint8Array(fixes.length), new Uint8Array(checks.length));
  return { problem, root, size: () => situations.size, expand, settleAll, step };
}

/** Chance that a fix cures under these beliefs. */
export function cureChance({ causes, cure }: ReadyFix, belief: Float64Array): number {
  let chance = 0;
  for (let entry = 0; entry < causes.length; entry++) chance += belief[causes[entry]!]! * cure[entry]!;
  return chance;
}

/** Open fixes, by chance to cure over cost. */
function openFixes({ fixes }: ReadyProblem, from: Situation): number[] {
  const rated: { position: number; rate: number }[] = [];
  fixes.forEach((fix, position) => {
    if (from.tried[position]) return;
    const chance = cureChance(fix, from.belief);
    if (chance > NEGLIGIBLE) rated.push({ position, rate: chance / Math.max(fix.cost, NEGLIGIBLE) });
  });
  return rated.sort((a, b) => b.rate - a.rate).map(({ position }) => position);
}

/** Open checks that tell something, by mutual information over cost. */
function openChecks({ checks }: ReadyProblem, from: Situation): number[] {
  const rated: { position: number; rate: number }[] = [];
  const believed: number[] = [];
  for (let cause = 0; cause < from.belief.length; cause++) if (from.belief[cause]! >= RATED_BELIEF) believed.push(cause);
  checks.forEach((check, position) => {
    if (from.done[position] || !check.prerequisites.every((needed) => from.done[needed])) return;
    const information = outcomeInformation(from.belief, believed, check);
    if (information > 1e-6) rated.push({ position, rate: information / Math.max(check.cost, NEGLIGIBLE) });
  });
  return rated.sort((a, b) => b.rate - a.rate).map(({ position }) => position);
}

/** Mutual information of outcome and cause in nats, over the causes that are believed at all. */
function outcomeInformation(belief: Float64Array, believed: readonly number[], check: ReadyCheck): number {
  const { table, values, rowInformation } = check;
  const chances = new Float64Array(values);
  let information = 0;
  let total = 0;
  for (let place = 0; place < believed.length; place++) {
    const cause = believed[place]!;
    const mass = belief[cause]!;
    total += mass;
    information += mass * rowInformation[cause]!;
    for (let value = 0, cell = cause * values; value < values; value++) chances[value]! += mass * table[cell + value]!;
  }
  for (let value = 0; value < values; value++) {
    const chance = chances[value]!;
    if (chance > 0) information -= chance * Math.log(chance / total);
  }
  return information;
}

function outcomeChances(belief: Float64Array, { table, values }: ReadyCheck): Float64Array {
  const chances = new Float64Array(values);
  for (let cause = 0, cell = 0; cause < belief.length; cause++) {
    const mass = belief[cause]!;
    if (mass === 0) {
      cell += values;
      continue;
    }
    for (let outcome = 0; outcome < values; outcome++) chances[outcome]! += mass * table[cell++]!;
  }
  return chances;
}

function seen(belief: Float64Array, { powered, values }: ReadyCheck, outcome: number): Float64Array {
  const after = new Float64Array(belief.length);
  for (let cause = 0; cause < belief.length; cause++) after[cause] = belief[cause]! * powered[cause * values + outcome]!;
  return normalise(after);
}

function normalise(belief: Float64Array): Float64Array {
  let sum = 0;
  for (let cause = 0; cause < belief.length; cause++) sum += belief[cause]!;
  for (let cause = 0; cause < belief.length; cause++) belief[cause]! /= sum;
  return belief;
}

function withMark(mask: Uint8Array, position: number): Uint8Array {
  const marked = mask.slice();
  marked[position] = 1;
  return marked;
}

/** Inserts a character so that the key stays sorted: the same steps in any order make the same key. */
function insertCode(key: string, code: number): string {
  let place = 0;
  while (place < key.length && key.charCodeAt(place) < code) place++;
  return key.slice(0, place) + String.fromCharCode(code) + key.slice(place);
}

/** What a unit costs when its cause is known: its own fixes by chance over cost, or handing over. */
function knownCauseCosts({ fixes, fixesOf, handOverCost }: ReadyProblem): Float64Array {
  return Float64Array.from(fixesOf, (own) => {
    const tries = [...own.fixes.keys()].map((entry) => ({ cure: own.cure[entry]!, cost: fixes[own.fixes[entry]!]!.cost }));
    tries.sort((a, b) => b.cure * a.cost - a.cure * b.cost);
    let uncured = 1;
    let spent = 0;
    let best = handOverCost;
    for (const { cure, cost } of tries) {
      spent += cost * uncured;
      uncured *= 1 - cure;
      best = Math.min(best, spent + handOverCost * uncured);
    }
    return best;
  });
}
