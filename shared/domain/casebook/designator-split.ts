import { isLive } from '../../stats/record-index';
import { readCauses } from '../../stats/record-words';
import type { CasebookModel } from './casebook-model';

/** Pseudo-count of each designator: half a case, the Jeffreys prior of a multinomial. */
const JEFFREYS = 0.5;

export type DesignatorShare = { designator: string; probability: number; cases: number };

/**
 * Which part it is, given that the cause is right: a cause's role is often carried by several parts of a board.
 * A case on this board counts one, split evenly over the designators it names for the cause; each designator
 * starts at half a case. Shares are 0 to 1 and sum to 1, likeliest first. Empty where the board is not known or
 * carries no part of the role.
 */
export function designatorSplit(model: CasebookModel, board: string, causeSlug: string): DesignatorShare[] {
  const role = model.words.causes.get(causeSlug)?.role;
  const parts = model.words.devices.get(board)?.board?.parts.filter((part) => part.role === role) ?? [];
  if (parts.length === 0) return [];
  const counted = new Map(parts.map((part) => [part.designator, { mass: JEFFREYS, cases: 0 }]));
  for (const names of namedDesignators(model, board, causeSlug)) {
    const named = names.flatMap((designator) => counted.get(designator) ?? []);
    for (const cell of named) {
      cell.mass += 1 / named.length;
      cell.cases += 1;
    }
  }
  const total = [...counted.values()].reduce((sum, cell) => sum + cell.mass, 0);
  return [...counted]
    .map(([designator, { mass, cases }]) => ({ designator, probability: mass / total, cases }))
    .sort((a, b) => b.probability - a.probability || (a.designator < b.designator ? -1 : 1));
}

/** Designators that each case on the board names for the cause; met in the list of the cause. */
function* namedDesignators({ coding, index, designators: pool }: CasebookModel, board: string, slug: string): Generator<string[]> {
  const node = coding.deviceOf(board);
  const cause = coding.causeOf(slug);
  const list = cause === undefined ? undefined : index.byCause[cause];
  if (list === undefined) return;
  for (let i = 0; i < list.length; i += 1) {
    const row = list.rows[i] as number;
    if (index.device[row] !== node || !isLive(index, row)) continue;
    const { causes, designators } = readCauses(index, row);
    yield (designators[causes.indexOf(cause as number)] ?? []).map((number) => pool.names[number] as string);
  }
}
