import { fixSequencer } from './fix-sequence';
import type { ReadyProblem } from './plan-problem';
import { bestChecks, bestFixes, cureChance, NEGLIGIBLE, outcomeChances } from './rate-steps';

/** How many fixes and checks are weighed in the first situation, and in each later one: the best by their rate. */
const WEIGHED_FIRST = { fixes: 12, checks: 16 };
const WEIGHED_LATER = { fixes: 3, checks: 4 };

/** First character code of a key; those below are left alone. */
const FIRST_CODE = 0x100;

/** A situation: what was tried and seen, and the beliefs that follow from it. */
export type Situation = {
  readonly key: string;
  readonly belief: Float64Array;
  readonly tried: Uint8Array;
  readonly done: Uint8Array;
  /** Cost of a plan that is known from here; falls as the search goes on. */
  value: number;
  /** Cost of the best sequence of fixes alone; infinite while another step is due first. */
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
  readonly ways: readonly Way[];
};

export type Way = { readonly outcome: number; readonly chance: number; readonly to: Situation };

/**
 * The situations that can be reached from a problem's start, made as they are asked for. Beliefs depend on what was tried and
 * seen, not on its order, so that situations reached in several ways are one.
 */
export type PlanGraph = {
  readonly problem: ReadyProblem;
  readonly root: Situation;
  readonly situations: Map<string, Situation>;
  /** Situations with branches, by the number of steps that lead to them. */
  readonly expanded: Situation[][];
  readonly sequenceCost: ReturnType<typeof fixSequencer>;
  /** Code of each check's first outcome in a key. */
  readonly checkCodes: readonly number[];
};

/** A graph that holds its first situation alone. */
export function planGraph(problem: ReadyProblem): PlanGraph {
  const checkCodes: number[] = [];
  let code = FIRST_CODE + problem.fixes.length;
  for (const check of problem.checks) {
    checkCodes.push(code);
    code += check.values;
  }
  const graph = { problem, checkCodes, situations: new Map(), expanded: [], sequenceCost: fixSequencer(problem) };
  const masks = { tried: new Uint8Array(problem.fixes.length), done: new Uint8Array(problem.checks.length) };
  return { ...graph, root: addSituation(graph, { key: '', belief: problem.posterior, ...masks }) };
}

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

/** Carries what was learnt about later situations back to all earlier ones, so that every value is that of its plan. */
export function settleAll({ expanded }: PlanGraph): void {
  for (let steps = expanded.length - 1; steps >= 0; steps--) expanded[steps]?.forEach(settle);
}

/** Weighs the steps that are open in a situation, once: the step that is due, or else the best fixes and checks. */
export function expand(graph: PlanGraph, from: Situation): Branch[] {
  if (from.branches) return from.branches;
  const { problem, expanded } = graph;
  const due = dueStep(problem, from);
  const weighed = from.key === '' ? WEIGHED_FIRST : WEIGHED_LATER;
  from.branches =
    due !== null
      ? [due.kind === 'check' ? afterCheck(graph, from, due.position) : afterFailure(graph, from, due.position)]
      : [
          ...bestFixes(problem, from.belief, from.tried, weighed.fixes).map((position) => afterFailure(graph, from, position)),
          ...bestChecks(problem, from.belief, from.done, weighed.checks).map((position) => afterCheck(graph, from, position)),
        ];
  settle(from);
  const steps = from.key.length;
  expanded[steps] ??= [];
  expanded[steps].push(from);
  return from.branches;
}

/** The step that comes next whatever else would cost less, or null. */
function dueStep({ first, start }: ReadyProblem, { key, done }: Pick<Situation, 'key' | 'done'>): ReadyProblem['start'] {
  if (key === '' && start !== null) return start;
  const position = first.find((check) => !done[check]);
  return position === undefined ? null : { kind: 'check', position };
}

/** The step to take by what is known, or null for handing over; makes the situations it leads to. */
export function bestStep(graph: PlanGraph, from: Situation): Branch | null {
  let best: Branch | null = null;
  let least = from.fixesOnly * (1 - NEGLIGIBLE);
  for (const branch of from.branches ?? []) {
    const cost = branchCost(branch);
    if (cost < least) {
      least = cost;
      best = branch;
    }
  }
  if (best !== null || from.fixesOnly >= graph.problem.handOverCost) return best;
  const order: number[] = [];
  graph.sequenceCost(from.belief, from.tried, order);
  return order.length === 0 ? null : afterFailure(graph, from, order[0]!);
}

function addSituation(graph: Omit<PlanGraph, 'root'>, what: Pick<Situation, 'key' | 'belief' | 'tried' | 'done'>): Situation {
  const { key, belief, tried, done } = what;
  const fixesOnly = dueStep(graph.problem, what) !== null ? Infinity : graph.sequenceCost(belief, tried);
  const made = { key, belief, tried, done, fixesOnly, value: fixesOnly, branches: null, depth: 0, width: 0 };
  graph.situations.set(key, made);
  return made;
}

function afterFailure(graph: PlanGraph, from: Situation, position: number): Branch {
  const fix = graph.problem.fixes[position]!;
  const chance = 1 - cureChance(fix, from.belief);
  const branch = { kind: 'fix' as const, position, cost: fix.cost };
  if (chance <= NEGLIGIBLE) return { ...branch, ways: [] };
  const key = insertCode(from.key, FIRST_CODE + position);
  let to = graph.situations.get(key);
  if (to === undefined) {
    const belief = from.belief.slice();
    for (let entry = 0; entry < fix.causes.length; entry++) belief[fix.causes[entry]!]! *= 1 - fix.cure[entry]!;
    to = addSituation(graph, { key, belief: normalise(belief), tried: withMark(from.tried, position), done: from.done });
  }
  return { ...branch, ways: [{ outcome: 0, chance, to }] };
}

function afterCheck(graph: PlanGraph, from: Situation, position: number): Branch {
  const check = graph.problem.checks[position]!;
  const chances = outcomeChances(from.belief, check);
  const done = withMark(from.done, position);
  const ways: Way[] = [];
  for (let outcome = 0; outcome < check.values; outcome++) {
    const chance = chances[outcome]!;
    if (chance <= NEGLIGIBLE) continue;
    const key = insertCode(from.key, graph.checkCodes[position]! + outcome);
    let to = graph.situations.get(key);
    if (to === undefined) {
      const belief = from.belief.slice();
      for (let cause = 0; cause < belief.length; cause++) belief[cause]! *= check.powered[cause * check.values + outcome]!;
      to = addSituation(graph, { key, belief: normalise(belief), tried: from.tried, done });
    }
    ways.push({ outcome, chance, to });
  }
  return { kind: 'check', position, cost: check.cost, ways };
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
