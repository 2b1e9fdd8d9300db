import { simulateRepair } from '../../shared/stats/decide/simulate-repair';
import { seededRandom } from '../random';
import type { World } from '../world';
import type { createBench, PolicyName } from './bench-policies';
import { drawBrought } from './draw-brought';

export type UnitRun = {
  policy: PolicyName;
  cured: boolean;
  minutes: number;
  partCost: number;
  steps: string[];
};
export type UnitResult = { unit: number; board: string; cause: string; runs: UnitRun[] };

type Bench = ReturnType<typeof createBench>;

/**
 * One invented unit, taken through every policy. The same seed and number are the same unit, with the same answers to the same
 * questions: policies are compared on common random numbers.
 */
export function simulateUnit(
  world: World,
  bench: Bench,
  { number, seed, boards, policies }: { number: number; seed: string; boards: readonly string[]; policies: readonly PolicyName[] },
): UnitResult {
  const { checks, fixes } = bench.vocabulary;
  const unit = drawBrought(world, boards, seededRandom(`unit ${seed} ${number}`));
  const open = bench.policies(unit);
  const runs = policies.map((policy): UnitRun => {
    const { cured, minutes, partCost, steps } = simulateRepair(bench.answers(unit), open[policy], bench.costs);
    const named = steps.map(({ kind, index, value }) =>
      kind === 'check' ? `${checks[index]!.slug}=${checks[index]!.outcomes[value]!.slug}` : fixes[index]!.slug,
    );
    return { policy, cured, minutes, partCost, steps: named };
  });
  return { unit: number, board: unit.board, cause: unit.cause, runs };
}
