import type { PlanProblem } from '../../../shared/stats/decide/plan-problem';
import { randomProblem } from './random-problem';

/** 110 causes of which some dozens matter, 90 fixes for up to four causes each, 110 checks. */
export function fullSizeProblem(random: () => number): PlanProblem {
  const problem = randomProblem(random, { causes: 110, fixes: 90, checks: 110 });
  for (const { cure } of problem.fixes) {
    let kept = 0;
    cure.forEach((chance, cause) => {
      if (chance > 0 && ++kept > 4) cure[cause] = 0;
    });
  }
  const sharp = problem.posterior.map((belief) => belief ** 1.5);
  const sum = sharp.reduce((a, b) => a + b, 0);
  return { ...problem, posterior: sharp.map((belief) => belief / sum), hourValue: 20, handOverCost: 90 };
}
