import { expectedTotals, runningTotals } from './plan-totals';
import { type PlanProblem, type ReadyProblem, readyProblem, type StepRef } from './plan-problem';
import { type Branch, bestStep, type PlanGraph, type Situation, type Way } from './plan-graph';
import { DEFAULT_EFFORT, searchPlan } from './plan-search';
import { fixRate } from './rate-steps';

/** Situations weighed for the very next step alone; for simulations, where a plan is made anew after every step. */
const NEXT_STEP_EFFORT = 600;

/** A step to take, or the end of the plan. */
export type PlanMove = StepRef | { readonly kind: 'hand-over' };

/** Why a step stands where it stands. */
export type PlanReason =
  /** Safe power-up: it comes first whatever it tells. */
  | 'comes-first'
  /** The step that the problem has to begin with. */
  | 'begins'
  /** A check that saves more than it costs. */
  | 'saves-more-than-it-costs'
  /** The fix with the most chance to cure for its cost. */
  | 'most-chance-for-its-cost'
  /** A fix that is not the best by itself, but with what follows. */
  | 'best-with-what-follows';

export type PlannedStep = {
  kind: 'check' | 'fix';
  /** Index into the problem's checks or fixes. */
  index: number;
  minutes: number;
  partCost: number;
  /** Chance that this step is reached on the listed line. */
  reach: number;
  /** Chance that a fix cures the unit at hand, once it has come to this step; 0 for a check. */
  chanceHere: number;
  /** Chance that the unit works before and after this many steps of the plan, over all its outcomes. */
  chanceBefore: number;
  chanceAfter: number;
  /** Minutes and part cost spent by the end of this many steps, over all outcomes; hand-over costs are not among them. */
  expectedMinutesSoFar: number;
  expectedPartCostSoFar: number;
  reason: PlanReason;
  /** What a check is expected to save, its own cost already paid, over the best fixes without any check; null for fixes. */
  saves: number | null;
  /** What to do after each outcome of a check; empty for a fix. */
  outcomes: { value: number; probability: number; next: PlanMove }[];
  /** The outcome that the list goes on with; null for a fix, after which it goes on where that did not cure. */
  follows: number | null;
};

export type RepairPlan = {
  /** The listed line: after each check the most likely outcome that leads to a further step; no cure after each fix. */
  steps: PlannedStep[];
  /** Every plan ends in stopping or handing over; the chance that it comes to that, over all outcomes. */
  handOver: { chance: number; cost: number };
  /** Over the whole plan with all its outcomes. `expectedCost` counts time, parts and the hand-over. */
  expectedMinutes: number;
  expectedPartCost: number;
  expectedCost: number;
  chanceResolved: number;
  /** What the best sequence of fixes without any check would cost; Infinity where the first step is given. */
  fixesOnlyCost: number;
  /** The plan with all its branches; null is the hand-over. */
  policy: PolicyNode | null;
  /** Situations weighed. */
  evaluations: number;
};

/** One step of the plan with all its ways on: a fix's single way is that it did not cure. */
export type PolicyNode = {
  move: { kind: 'check' | 'fix'; index: number };
  ways: { outcome: number; chance: number; to: PolicyNode | null }[];
};

/**
 * A conditional plan of checks and fixes with a low expected cost, ending in "stop or hand over". See `searchPlan` for the
 * method. No fix is tried twice; a failed fix counts as evidence (P(no cure | cause) = 1 - cure), an outcome of a check
 * likewise, with the check's weight. All figures are expected under the beliefs as they would stand at each step; with
 * weights other than 1 these do not average out to the beliefs at the start, and the figures are good to that extent only.
 * Throws a RangeError where the problem is ill-formed.
 */
export function repairPlan(problem: PlanProblem): RepairPlan {
  const ready = readyProblem(problem);
  const graph = searchPlan(ready, problem.effort ?? DEFAULT_EFFORT);
  const totals = expectedTotals(graph);
  return {
    steps: listedSteps(graph, ready),
    handOver: { chance: totals.handedOver, cost: ready.handOverCost },
    expectedMinutes: totals.minutes,
    expectedPartCost: totals.partCost,
    expectedCost: totals.cost,
    chanceResolved: 1 - totals.handedOver,
    fixesOnlyCost: graph.root.fixesOnly,
    policy: policyFrom(graph, graph.root, new Map()),
    evaluations: graph.situations.size,
  };
}

/** The first step of a repair plan alone, found with less effort unless the problem asks for more. */
export function nextStep(problem: PlanProblem): PlanMove {
  const graph = searchPlan(readyProblem(problem), problem.effort ?? NEXT_STEP_EFFORT);
  return moveOf(graph.problem, bestStep(graph, graph.root));
}

function moveOf(problem: ReadyProblem, branch: Branch | null): PlanMove {
  if (branch === null) return { kind: 'hand-over' };
  const list = branch.kind === 'fix' ? problem.fixes : problem.checks;
  return { kind: branch.kind, index: list[branch.position]!.index };
}

function policyFrom(graph: PlanGraph, situation: Situation, known: Map<Situation, PolicyNode | null>): PolicyNode | null {
  if (known.has(situation)) return known.get(situation)!;
  const branch = bestStep(graph, situation);
  const move = moveOf(graph.problem, branch);
  const node: PolicyNode | null =
    branch === null || move.kind === 'hand-over'
      ? null
      : { move, ways: branch.ways.map(({ outcome, chance, to }) => ({ outcome, chance, to: policyFrom(graph, to, known) })) };
  known.set(situation, node);
  return node;
}

function listedSteps(graph: PlanGraph, problem: ReadyProblem): PlannedStep[] {
  const running = runningTotals(graph);
  const steps: PlannedStep[] = [];
  let situation: Situation | undefined = graph.root;
  let reach = 1;
  for (let depth = 0; situation !== undefined; depth++) {
    const branch = bestStep(graph, situation);
    if (branch === null) break;
    const before = running[depth]!;
    const after = running[depth + 1]!;
    const { index, minutes, partCost } = (branch.kind === 'fix' ? problem.fixes : problem.checks)[branch.position]!;
    const isCheck = branch.kind === 'check';
    const followed = followedWay(graph, branch);
    steps.push({
      kind: branch.kind,
      index,
      minutes,
      partCost,
      reach,
      chanceHere: isCheck ? 0 : 1 - (followed?.chance ?? 0),
      chanceBefore: before.cured,
      chanceAfter: after.cured,
      expectedMinutesSoFar: after.minutes,
      expectedPartCostSoFar: after.partCost,
      reason: reasonFor(problem, situation, branch),
      saves: isCheck && Number.isFinite(situation.fixesOnly) ? situation.fixesOnly - situation.value : null,
      outcomes: isCheck ? branch.ways.map((way) => outcomeOf(graph, way)) : [],
      follows: isCheck ? (followed?.outcome ?? null) : null,
    });
    reach *= followed?.chance ?? 0;
    situation = followed?.to;
  }
  return steps;
}

/** The most likely way that leads to a further step; where none does, the most likely one. */
function followedWay(graph: PlanGraph, branch: Branch): Way | undefined {
  const ranked = branch.ways.toSorted((a, b) => b.chance - a.chance);
  return ranked.find((way) => bestStep(graph, way.to) !== null) ?? ranked[0];
}

function outcomeOf(graph: PlanGraph, { outcome, chance, to }: Way): PlannedStep['outcomes'][number] {
  return { value: outcome, probability: chance, next: moveOf(graph.problem, bestStep(graph, to)) };
}

function reasonFor(problem: ReadyProblem, situation: Situation, branch: Branch): PlanReason {
  if (situation.key === '' && problem.start !== null) return 'begins';
  if (branch.kind === 'check') return problem.first.includes(branch.position) ? 'comes-first' : 'saves-more-than-it-costs';
  const rate = (position: number) => fixRate(problem.fixes[position]!, situation.belief);
  const own = rate(branch.position) * (1 + 1e-9);
  const isBest = problem.fixes.every((_, position) => situation.tried[position] === 1 || rate(position) <= own);
  return isBest ? 'most-chance-for-its-cost' : 'best-with-what-follows';
}
