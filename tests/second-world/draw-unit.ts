import type { Random, SimulatedUnit } from '../../seed/world';
import { FIX_RESULTS } from '../../shared/schemas/case';
import { boardModel, knownCheck } from './model/fault-model';
import { type SyndromeName, syndromes } from './model/syndromes';
import { hashText, pickIndex, seededRandom } from './seeded-random';

/** A unit with what its drawing knows besides. */
export type DrawnUnit = SimulatedUnit & { picture: SyndromeName; powered: boolean };

/** One draw that belongs to this unit and key, whatever was asked before. */
const answerOf = (unit: number, key: string): Random => seededRandom(hashText(`${unit} ${key}`));

/**
 * A unit of the board: a cell is drawn (cause and fault picture), then each symptom in the order in which
 * hiders come first; one that a seen symptom hides is left out. Checks and fixes are answered when asked.
 */
export function drawUnit(random: Random, board: string): DrawnUnit {
  const model = boardModel(board);
  const c = pickIndex(random, model.cellWeights, 1);
  const cell = model.cells[c]!;
  const present = new Set<number>();
  const symptoms: SimulatedUnit['symptoms'] = [];
  for (const [i, symptom] of model.order.slugs.entries()) {
    const shows = random() < cell.symptoms[i]!;
    if (model.order.hiders[i]!.some((hider) => present.has(hider))) continue;
    if (shows) present.add(i);
    symptoms.push({ symptom, present: shows });
  }
  const unit = Math.floor(random() * 4294967296);
  return {
    board,
    cause: cell.cause,
    picture: cell.picture,
    powered: syndromes[cell.picture].state === 'runs',
    symptoms,
    check(slug) {
      const check = knownCheck(slug);
      if (!model.checks.includes(check)) throw new Error(`Check "${slug}" makes no sense on board "${board}".`);
      const chances = model.checkTable(slug).map((row) => row[c]!);
      return check.outcomes[pickIndex(answerOf(unit, `check ${slug}`), chances, 1)]!.slug;
    },
    fix(slug) {
      const chances = model.fixTable(slug).map((row) => row[c]!);
      return FIX_RESULTS[pickIndex(answerOf(unit, `fix ${slug}`), chances, 1)]!;
    },
  };
}
