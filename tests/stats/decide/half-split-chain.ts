import { posteriorAfter, predictive } from '../../../shared/stats/decide/check-model';
import { type CheckCandidate, nextChecks } from '../../../shared/stats/decide/next-check';

/** A perfect check at a boundary of a chain of stages: outcome 0 where the fault lies before it, 1 where after. */
export function chainCheck(stages: number, boundary: number): CheckCandidate {
  const table = new Float64Array((stages + 1) * 2);
  for (let stage = 0; stage <= stages; stage++) table[stage * 2 + (stage < boundary ? 0 : 1)] = 1;
  return {
    table,
    values: 2,
    weight: 1,
    minutes: 1,
    stage: 2,
    prerequisitesMet: true,
    possible: true,
    instrumentsHeld: true,
    risk: 0,
    safetyFirst: false,
    alreadySetUp: false,
  };
}

/**
 * Follows the first suggestion through every outcome until it stops, on a chain with these chances per stage.
 * Returns the expected and the largest number of checks; throws if it stops before the cause is proved.
 */
export function expectedChecks(chances: Float64Array): { expected: number; worst: number } {
  const stages = chances.length;
  const candidates = Array.from({ length: stages - 1 }, (_, index) => chainCheck(stages, index + 1));
  const follow = (posterior: Float64Array): { expected: number; worst: number } => {
    const result = nextChecks({ posterior, candidates, poweredDone: true });
    if (result.stop === 'cause-proved') return { expected: 0, worst: 0 };
    if (result.offered.length === 0) throw new Error(`stopped too early: ${result.stop}`);
    const check = candidates[result.offered[0]!.candidate]!;
    let expected = 1;
    let worst = 0;
    predictive(posterior, check).forEach((chance, value) => {
      if (chance === 0) return;
      const rest = follow(posteriorAfter(posterior, check, value));
      expected += chance * rest.expected;
      worst = Math.max(worst, rest.worst);
    });
    return { expected, worst: worst + 1 };
  };
  return follow(Float64Array.of(...chances, 0));
}
