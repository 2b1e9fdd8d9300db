import type { Board, DeviceCatalogue, DeviceModel } from '../../shared/schemas/device';
import { vocabulary } from '../vocabulary';
import { bramfieldHalo } from './bramfield-halo';
import { ormadicDuo } from './ormadic-duo';
import { ormadicThree } from './ormadic-three';
import { quellbrook8 } from './quellbrook-8';
import { quellbrookCm14 } from './quellbrook-cm14';
import { quellbrookDu5 } from './quellbrook-du5';
import { quellbrookTr2 } from './quellbrook-tr2';
import { tessalyFen16 } from './tessaly-fen-16';
import { tessalyPocket } from './tessaly-pocket';

const MODELS = [
  quellbrook8,
  ormadicDuo,
  tessalyPocket,
  ormadicThree,
  quellbrookCm14,
  tessalyFen16,
  quellbrookDu5,
  quellbrookTr2,
  bramfieldHalo,
];

/** Supply rails come from outside where a board has no regulator, and can be measured all the same. */
const ALWAYS_POSSIBLE: ReadonlySet<string> = new Set(['rail-5v', 'rail-12v', 'rail-ripple']);

/** The machines of the demo world, all invented; some parts stand on boards of several models. */
export const catalogue: DeviceCatalogue = { models: MODELS.map(withImpossibleChecks) };

function withImpossibleChecks(model: DeviceModel): DeviceModel {
  return { ...model, boards: model.boards.map((board) => boardWithImpossibleChecks(model, board)) };
}

/** Adds to what a board names itself every check of its category whose part it does not have. */
function boardWithImpossibleChecks(model: DeviceModel, board: Board): Board {
  const onBoard = new Set(board.parts.map((part) => part.role));
  const outside = new Set(vocabulary.roles.filter((role) => role.outside).map((role) => role.slug));
  const missing = vocabulary.checks.filter(
    (check) =>
      check.categories.includes(model.category) &&
      !ALWAYS_POSSIBLE.has(check.slug) &&
      !onBoard.has(check.targetRole) &&
      !outside.has(check.targetRole),
  );
  const impossible = new Set([...board.impossibleChecks, ...missing.map((check) => check.slug)]);
  return { ...board, impossibleChecks: [...impossible].sort() };
}
