import { vocabulary } from '../../seed/vocabulary';
import type { World } from '../../seed/world';
import { secondCatalogue } from './catalogue/second-catalogue';
import { drawUnit } from './draw-unit';
import { boardPrior, boardPriors } from './model/board-priors';
import { truePosterior } from './posterior';
import { drawWorkingUnits } from './readings';
import { repair } from './repairer/repair';
import { writeUp } from './repairer/write-up';
import { detail, hashText, pickIndex, seededRandom } from './seeded-random';

/** How many units of each board come to a bench, relative to each other. */
const boards = [...boardPriors.keys()];
const popularity = boards.map((board) => 0.35 + 1.3 * detail(`popularity ${board}`));
const allUnits = popularity.reduce((sum, share) => sum + share, 0);

/**
 * Accepted cases drawn from the model. Each is a unit, repaired by somebody who decides from recorded
 * findings and chance alone, and written up as they believe it to be.
 */
const drawCases: World['drawCases'] = (seed, count) =>
  Array.from({ length: count }, (_, i) => {
    const random = seededRandom(hashText(`case ${seed} ${i}`));
    const board = boards[pickIndex(random, popularity, allUnits)]!;
    const unit = drawUnit(random, board);
    return { content: writeUp(random, unit, repair(random, unit)), board, trueCause: unit.cause };
  });

/**
 * A second written fault model, with other devices, numbers and structure than the demo's, made without
 * sight of the statistics: for measuring only, never for fitting or for setting constants.
 */
export const secondWorld: World = {
  name: 'second world',
  vocabulary,
  catalogue: secondCatalogue,
  prior: (board) => new Map(boardPrior(board).prior),
  truePosterior,
  drawUnit: (random, board) => {
    const { cause, symptoms, check, fix } = drawUnit(random, board);
    return { board, cause, symptoms, check, fix };
  },
  drawCases,
  drawWorkingUnits,
};
