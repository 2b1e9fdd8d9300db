/** One part of the simulated units: told what to do by `simulate-repairs.ts`. */
import { seededRandom } from '../../seed/random';
import type { Random, SimulatedUnit, World } from '../../seed/world';
import type { CaseContent } from '../../shared/schemas/case';
import { simulateRepair } from '../../shared/stats/decide/simulate-repair';
import type { Settings } from '../../shared/stats/settings';
import { createBench, type PolicyName } from './bench-policies';
import { casebookOf } from './trained-model';
import { worldNamed } from './worlds';

export type WorkerTask = {
  world: string;
  cases: CaseContent[];
  boards: string[];
  settings: Settings;
  seed: number;
  units: number[];
  effort: number;
};
export type UnitRun = { policy: PolicyName; cured: boolean; minutes: number; partCost: number; steps: string[] };
export type UnitResult = { unit: number; board: string; cause: string; runs: UnitRun[] };

process.once('message', async (task: WorkerTask) => {
  const world = worldNamed(task.world);
  const bench = createBench({ model: casebookOf(world, task.cases, task.settings), effort: task.effort });
  for (const number of task.units) await send(repairOne(task, world, bench, number));
  process.disconnect();
});

/** A unit that shows at least one symptom: nobody brings another to the bench. */
function drawFaulty(world: World, boards: readonly string[], random: Random): SimulatedUnit {
  for (;;) {
    const unit = world.drawUnit(random, boards[Math.floor(random() * boards.length)]!);
    if (unit.symptoms.some(({ present }) => present)) return unit;
  }
}

function send(result: UnitResult): Promise<void> {
  return new Promise((resolve, reject) => process.send!(result, (error: Error | null) => (error ? reject(error) : resolve())));
}

function repairOne(
  { seed, boards }: WorkerTask,
  world: World,
  bench: ReturnType<typeof createBench>,
  number: number,
): UnitResult {
  const { checks, fixes } = world.vocabulary;
  const random = seededRandom(`unit ${seed} ${number}`);
  const unit = drawFaulty(world, boards, random);
  const runs = Object.entries(bench.policies(unit)).map(([policy, decide]): UnitRun => {
    const { cured, minutes, partCost, steps } = simulateRepair(bench.answers(unit), decide, bench.costs);
    const named = steps.map(({ kind, index, value }) =>
      kind === 'check' ? `${checks[index]!.slug}=${checks[index]!.outcomes[value]!.slug}` : fixes[index]!.slug,
    );
    return { policy: policy as PolicyName, cured, minutes, partCost, steps: named };
  });
  return { unit: number, board: unit.board, cause: unit.cause, runs };
}
