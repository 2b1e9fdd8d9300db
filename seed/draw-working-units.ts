import type { Reading, WorkingUnitRecord } from '../shared/schemas/case';
import { drawMonth } from './draw-cases/draw-month';
import type { FaultWorld } from './engine/fault-world';
import { pickWeighted, seededRandom, shuffled } from './random';
import { readableParts, workingReading } from './working-pins';

/**
 * Readings from units that work: one to five chips of a board, pin by pin, most pins of each. Boards come up by
 * popularity; boards without named pins are left out. About one unit in forty has a pin read wrongly or bent.
 */
export function drawWorkingUnits(world: FaultWorld, seed: number, count: number): Omit<WorkingUnitRecord, 'id'>[] {
  const random = seededRandom(seed);
  const boards = world.boards
    .filter((slug) => readableParts(world.place(slug).board.parts).length > 0)
    .map((slug) => [slug, world.model.boards[slug]?.popularity ?? 1] as const);
  return Array.from({ length: count }, () => {
    const slug = pickWeighted(random, boards);
    const parts = shuffled(random, readableParts(world.place(slug).board.parts)).slice(0, 1 + Math.floor(5 * random()));
    const readings: Reading[] = [];
    for (const part of parts) {
      for (let pin = 1; pin <= part.pins; pin += 1) {
        if (random() < 0.93) readings.push(workingReading(random, slug, part, pin));
      }
    }
    return { device: slug, month: drawMonth(random), readings: readings.slice(0, 400) };
  });
}
