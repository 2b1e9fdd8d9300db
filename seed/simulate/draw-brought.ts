import type { Random, SimulatedUnit, World } from '../world';

/** A unit that shows at least one symptom: nobody brings another to the bench. Boards as often as among the cases. */
export function drawBrought(world: World, boards: readonly string[], random: Random): SimulatedUnit {
  for (;;) {
    const unit = world.drawUnit(random, boards[Math.floor(random() * boards.length)]!);
    if (unit.symptoms.some(({ present }) => present)) return unit;
  }
}
