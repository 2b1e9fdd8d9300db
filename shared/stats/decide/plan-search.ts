import {
  type Branch,
  bestStep,
  branchCost,
  expand,
  type PlanGraph,
  planGraph,
  type Situation,
  settle,
  settleAll,
} from './plan-graph';
import type { ReadyProblem } from './plan-problem';

/** Situations weighed where the caller does not say: about 30 ms with 110 causes, 90 fixes and 110 checks. */
export const DEFAULT_EFFORT = 2500;

/** Situations of the plan that fewer units than this reach are left to the best sequence of fixes. */
const LEAST_REACH = 0.002;

/** Rounds: how many steps ahead, and how many of the best steps are followed that far. */
const ROUNDS = [
  { depth: 1, width: Infinity },
  { depth: 2, width: 4 },
  { depth: 3, width: 4 },
  { depth: 4, width: 8 },
  { depth: 6, width: 16 },
  { depth: Infinity, width: Infinity },
] as const;

/**
 * Searches a plan of low expected cost, ending in a hand-over. Every situation starts from the best sequence of fixes
 * alone, which is a plan; looking ahead from a situation can only replace it by a cheaper one, so the cost known for each
 * situation is always that of a plan at hand, and falls as the search goes on. Each round looks ahead from all situations
 * of the plan as it stands, the most often reached ones first: one step ahead over the most promising fixes and checks, then
 * deeper along the better ones, until the effort is used up or nothing is left to look at. Small problems are searched through.
 *
 * (One-step look-ahead on a sequence of fixes: Heckerman, Breese & Rommelse 1995; improving a known plan by looking
 * ahead: D. P. Bertsekas, "Dynamic Programming and Optimal Control", vol. 1, on rollout.)
 */
export function searchPlan(problem: ReadyProblem, effort: number = DEFAULT_EFFORT): PlanGraph {
  const graph = planGraph(problem);
  expandDue(graph, graph.root);
  for (const { depth, width } of ROUNDS) {
    for (let pending = true; pending && graph.situations.size < effort; ) {
      pending = false;
      for (const situation of planSituations(graph)) {
        if (graph.situations.size >= effort) break;
        if (isSearched(situation, depth, width)) continue;
        lookAhead({ graph, effort, width }, situation, depth);
        pending = true;
      }
      settleAll(graph);
    }
  }
  return graph;
}

/** Checks that are due whatever they tell have no plan without them: their situations are made at once. */
function expandDue(graph: PlanGraph, situation: Situation): void {
  if (Number.isFinite(situation.fixesOnly)) return;
  for (const branch of expand(graph, situation)) for (const way of branch.ways) expandDue(graph, way.to);
  settle(situation);
}

type Look = { graph: PlanGraph; effort: number; width: number };

function lookAhead(look: Look, situation: Situation, depth: number): void {
  if (isSearched(situation, depth, look.width) || look.graph.situations.size >= look.effort) return;
  const branches = expand(look.graph, situation);
  if (depth > 1) {
    for (const branch of worthFollowing(branches, look.width)) {
      for (const way of branch.ways) lookAhead(look, way.to, depth - 1);
      situation.value = Math.min(situation.value, branchCost(branch));
    }
  }
  settle(situation);
  situation.depth = depth;
  situation.width = look.width;
}

/** Searched as deep and as broadly already; one step ahead there is only one breadth. */
function isSearched(situation: Situation, depth: number, width: number): boolean {
  return situation.depth >= depth && (situation.width >= width || depth === 1);
}

function worthFollowing(branches: readonly Branch[], width: number): readonly Branch[] {
  const ranked = branches.map((branch) => ({ branch, cost: branchCost(branch) })).sort((a, b) => a.cost - b.cost);
  return ranked.slice(0, width).map(({ branch }) => branch);
}

/** Situations of the plan as it stands that are reached often enough, most often reached first. */
function planSituations(graph: PlanGraph): Situation[] {
  const reach = new Map<Situation, number>();
  let frontier = new Map<Situation, number>([[graph.root, 1]]);
  while (frontier.size > 0) {
    const next = new Map<Situation, number>();
    for (const [situation, chance] of frontier) {
      reach.set(situation, Math.max(chance, reach.get(situation) ?? 0));
      for (const way of bestStep(graph, situation)?.ways ?? []) {
        const onward = (next.get(way.to) ?? 0) + chance * way.chance;
        if (onward >= LEAST_REACH) next.set(way.to, onward);
      }
    }
    frontier = next;
  }
  return [...reach.keys()].sort((a, b) => reach.get(b)! - reach.get(a)!);
}
