import type { ReadyProblem } from './plan-problem';

/**
 * What a unit costs when its cause is known, one figure per cause: its own fixes by chance to cure over cost, until one cures or
 * handing over is cheaper. Optimal, because given the cause the fixes fail independently and the best stop is a prefix.
 * Weighted by the beliefs it bounds every plan from below (perfect information for nothing), at check weights of 1.
 */
export function knownCauseCosts({ fixes, fixesOf, handOverCost }: ReadyProblem): Float64Array {
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
