import type { ReadyProblem } from './plan-problem';
import { cureChance, NEGLIGIBLE } from './rate-steps';

export type FixSequence = {
  /** Expected cost of trying the fixes in this order until one cures, then handing over. */
  cost: number;
  /** Positions in the ready fixes; empty where handing over at once is cheaper. */
  order: number[];
};

/**
 * The best sequence of fixes alone, by chance to cure over cost, re-ranked after every failure, and cut where handing
 * over becomes cheaper. Optimal where each cause is cured by at most one fix (J. B. Kadane & H. A. Simon, "Optimal
 * strategies for a class of constrained sequential problems", Annals of Statistics 5, 1977; with a hand-over: D.
 * Heckerman, J. S. Breese & K. Rommelse, "Decision-theoretic troubleshooting", CACM 38(3), 1995). The ratio keeps falling
 * there, so a best subset is a prefix of the order, and every prefix is weighed.
 *
 * Returns a function of beliefs (sum 1) and a mask of fixes already tried; it reuses its scratch arrays and takes
 * microseconds. Pass `order` to have it filled with the order.
 */
export function fixSequencer(problem: ReadyProblem): (belief: Float64Array, tried: Uint8Array, order?: number[]) => number {
  const { fixes, fixesOf, handOverCost } = problem;
  const unit = Float64Array.from(fixes, (fix) => 1 / Math.max(fix.cost, NEGLIGIBLE));
  const left = new Float64Array(problem.posterior.length);
  const gain = new Float64Array(fixes.length);
  const open = new Int32Array(fixes.length);
  let reachable = 0;

  /** Takes what fix `tried` cures out of the causes, and out of the gains of the other fixes. */
  const fail = (tried: number): void => {
    const { causes, cure } = fixes[tried]!;
    for (let entry = 0; entry < causes.length; entry++) {
      const cause = causes[entry]!;
      const cured = left[cause]! * cure[entry]!;
      if (cured === 0) continue;
      left[cause]! -= cured;
      const others = fixesOf[cause]!;
      for (let other = 0; other < others.fixes.length; other++) gain[others.fixes[other]!]! -= cured * others.cure[other]!;
    }
  };

  /** Place of the open fix with the best ratio; notes what all open fixes together could win. */
  const leader = (opened: number): number => {
    let at = 0;
    let ratio = -1;
    reachable = 0;
    for (let place = 0; place < opened; place++) {
      const fix = open[place]!;
      reachable += gain[fix]!;
      const candidate = gain[fix]! * unit[fix]!;
      // Ties go to the lower index, so that the order does not depend on how the list was shuffled.
      if (candidate > ratio || (candidate === ratio && fix < open[at]!)) {
        ratio = candidate;
        at = place;
      }
    }
    return at;
  };

  return (belief, tried, order) => {
    left.set(belief);
    let opened = 0;
    for (let fix = 0; fix < fixes.length; fix++) {
      if (tried[fix]) continue;
      gain[fix] = cureChance(fixes[fix]!, left);
      if (gain[fix]! > NEGLIGIBLE) open[opened++] = fix;
    }
    let uncured = 1;
    let spent = 0;
    let best = handOverCost;
    let length = 0;
    const taken: number[] = [];
    while (opened > 0) {
      const at = leader(opened);
      const fix = open[at]!;
      // Even if all that is left to win were won for nothing, stopping earlier would have been as cheap.
      if (gain[fix]! <= NEGLIGIBLE || spent + handOverCost * Math.max(0, uncured - reachable) >= best) break;
      open[at] = open[--opened]!;
      spent += fixes[fix]!.cost * uncured;
      uncured -= gain[fix]!;
      fail(fix);
      taken.push(fix);
      const total = spent + handOverCost * Math.max(0, uncured);
      if (total < best * (1 - 1e-12)) {
        best = total;
        length = taken.length;
      }
    }
    if (order) order.push(...taken.slice(0, length));
    return best;
  };
}

/** The best sequence of fixes alone from the problem's beliefs. See `fixSequencer`. */
export function bestFixSequence(problem: ReadyProblem): FixSequence {
  const order: number[] = [];
  const cost = fixSequencer(problem)(problem.posterior, new Uint8Array(problem.fixes.length), order);
  return { cost, order };
}

/**
 * Expected cost of trying fixes in a given order until one cures, then handing over: each fix is paid for by the units
 * that no earlier one cured. `order` holds positions in the ready fixes.
 */
export function sequenceCost(problem: ReadyProblem, order: readonly number[]): number {
  const left = problem.posterior.slice();
  let uncured = 1;
  let cost = 0;
  for (const position of order) {
    const fix = problem.fixes[position];
    if (fix === undefined) throw new RangeError(`There is no fix ${position} to try.`);
    cost += fix.cost * uncured;
    fix.causes.forEach((cause, entry) => {
      const cured = left[cause]! * fix.cure[entry]!;
      left[cause]! -= cured;
      uncured -= cured;
    });
  }
  return cost + problem.handOverCost * Math.max(0, uncured);
}
