import type { PlanProblem } from '../../../shared/stats/decide/plan-problem';
import type { PolicyNode } from '../../../shared/stats/decide/repair-plan';

/**
 * What was done: for each fix whether it failed, for each check the outcome seen (or -1). Beliefs are recomputed from the
 * start each time, by plain multiplication, so that nothing is shared with the code under test.
 */
type History = { failed: boolean[]; seen: number[] };

/** Beliefs after a history. */
export function beliefAfter(problem: PlanProblem, { failed, seen }: History): number[] {
  const belief = [...problem.posterior].map((prior, cause) => {
    let mass = prior;
    failed.forEach((hasFailed, fix) => {
      if (hasFailed) mass *= 1 - problem.fixes[fix]!.cure[cause]!;
    });
    seen.forEach((outcome, index) => {
      const check = problem.checks[index]!;
      if (outcome >= 0) mass *= check.table[cause * check.values + outcome]! ** check.weight;
    });
    return mass;
  });
  const sum = belief.reduce((a, b) => a + b, 0);
  return belief.map((mass) => mass / sum);
}

export function stepCost(problem: PlanProblem, step: { minutes: number; partCost?: number }): number {
  return (step.minutes * problem.hourValue) / 60 + (step.partCost ?? 0);
}

const untouched = (problem: PlanProblem): History => ({
  failed: problem.fixes.map(() => false),
  seen: problem.checks.map(() => -1),
});

const withFailure = (history: History, fix: number): History => ({ ...history, failed: history.failed.with(fix, true) });
const withOutcome = (history: History, check: number, outcome: number): History => ({
  ...history,
  seen: history.seen.with(check, outcome),
});

/** One number per history, in mixed radix. */
function numberOf(problem: PlanProblem, { failed, seen }: History): number {
  let key = 0;
  for (const hasFailed of failed) key = key * 2 + (hasFailed ? 1 : 0);
  seen.forEach((outcome, check) => {
    key = key * (problem.checks[check]!.values + 1) + outcome + 1;
  });
  return key;
}

/** Least expected cost of any policy at all, by exhaustive dynamic programming over what can have been done and seen. */
export function exactCost(problem: PlanProblem): number {
  const known = new Map<number, number>();
  const from = (history: History): number => {
    const key = numberOf(problem, history);
    const found = known.get(key);
    if (found !== undefined) return found;
    const belief = beliefAfter(problem, history);
    let best = problem.handOverCost;
    problem.fixes.forEach((fix, index) => {
      if (history.failed[index]) return;
      const uncured = belief.reduce((sum, mass, cause) => sum + mass * (1 - fix.cure[cause]!), 0);
      const rest = uncured > 1e-12 ? uncured * from(withFailure(history, index)) : 0;
      best = Math.min(best, stepCost(problem, fix) + rest);
    });
    problem.checks.forEach((check, index) => {
      if (history.seen[index]! >= 0) return;
      let cost = stepCost(problem, check);
      for (let outcome = 0; outcome < check.values; outcome++) {
        const chance = belief.reduce((sum, mass, cause) => sum + mass * check.table[cause * check.values + outcome]!, 0);
        if (chance > 1e-12) cost += chance * from(withOutcome(history, index, outcome));
      }
      best = Math.min(best, cost);
    });
    known.set(key, best);
    return best;
  };
  return from(untouched(problem));
}

/** Expected cost of following a plan with all its branches, exactly. Throws where a step is repeated. */
export function policyCost(problem: PlanProblem, policy: PolicyNode | null): number {
  const from = (node: PolicyNode | null, history: History): number => {
    if (node === null) return problem.handOverCost;
    const { kind, index } = node.move;
    const belief = beliefAfter(problem, history);
    if (kind === 'fix') {
      if (history.failed[index]) throw new Error(`fix ${index} is tried twice`);
      const fix = problem.fixes[index]!;
      const uncured = belief.reduce((sum, mass, cause) => sum + mass * (1 - fix.cure[cause]!), 0);
      const rest = uncured > 1e-12 ? uncured * from(node.ways[0]!.to, withFailure(history, index)) : 0;
      return stepCost(problem, fix) + rest;
    }
    if (history.seen[index]! >= 0) throw new Error(`check ${index} is done twice`);
    const check = problem.checks[index]!;
    let cost = stepCost(problem, check);
    for (let outcome = 0; outcome < check.values; outcome++) {
      const chance = belief.reduce((sum, mass, cause) => sum + mass * check.table[cause * check.values + outcome]!, 0);
      if (chance <= 1e-12) continue;
      const way = node.ways.find((candidate) => candidate.outcome === outcome);
      if (way === undefined) throw new Error(`outcome ${outcome} of check ${index} leads nowhere`);
      cost += chance * from(way.to, withOutcome(history, index, outcome));
    }
    return cost;
  };
  return from(policy, untouched(problem));
}
