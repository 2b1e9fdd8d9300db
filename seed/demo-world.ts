import { catalogue } from './catalogue';
import { drawPlainCases } from './draw-cases/draw-cases';
import { drawWorkingUnits } from './draw-working-units';
import { drawUnit } from './engine/draw-unit';
import { createFaultWorld, type FaultWorld } from './engine/fault-world';
import { truePosterior } from './engine/true-posterior';
import { faultModel } from './fault-model';
import { narrate } from './narrative/narrate';
import { createLexicon } from './narrative/words';
import { seededRandom } from './random';
import { vocabulary } from './vocabulary';
import type { World } from './world';

/** A world from a written fault model; nothing in it depends on the statistics that are measured on it. */
export function worldOf(fault: FaultWorld): World {
  const lexicon = createLexicon(fault.vocabulary);
  return {
    name: fault.model.name,
    vocabulary: fault.vocabulary,
    catalogue: fault.catalogue,
    prior: (board) => {
      const numbers = fault.numbers(board);
      return new Map(numbers.causes.map((cause, index) => [cause, numbers.prior[index] as number]));
    },
    truePosterior: (board, findings) => truePosterior(fault.numbers(board), findings),
    drawUnit: (random, board) => drawUnit(fault.numbers(board), random),
    drawCases: (seed, count) => {
      const told = new Set<string>();
      return drawPlainCases(fault, seed, count).map(({ content, board, trueCause }, index) => {
        const random = seededRandom(`narrative ${seed} ${index}`);
        const telling = { random, lexicon, category: fault.place(board).device.category };
        let narrative = narrate(content, telling);
        while (told.has(narrative)) narrative = narrate(content, telling);
        told.add(narrative);
        return { content: { ...content, narrative }, board, trueCause };
      });
    },
    drawWorkingUnits: (seed, count) => drawWorkingUnits(fault, seed, count),
  };
}

export const demoFaultWorld: FaultWorld = createFaultWorld({ vocabulary, catalogue, model: faultModel });

/** The demo world: invented machines, a written fault model, and what can be drawn from it. */
export const demoWorld: World = worldOf(demoFaultWorld);
