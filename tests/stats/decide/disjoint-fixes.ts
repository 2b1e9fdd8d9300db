import type { PlanProblem } from '../../../shared/stats/decide/plan-problem';

/** Fixes that surely cure one cause each, with these chances and costs; what is missing to 1 is the unlisted cause. */
export function disjointFixes(chances: readonly number[], costs: readonly number[]): PlanProblem {
  const unlisted = Math.max(0, 1 - chances.reduce((a, b) => a + b, 0));
  const fixes = costs.map((partCost, own) => ({
    cure: Float64Array.of(...chances.map((_, cause) => (cause === own ? 1 : 0)), 0),
    minutes: 0,
    partCost,
    stage: 0,
  }));
  return { posterior: Float64Array.of(...chances, unlisted), fixes, checks: [], hourValue: 0, handOverCost: 1000 };
}
