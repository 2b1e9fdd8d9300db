import { vocabulary } from '../../../seed/vocabulary';
import type { BoardPart } from '../../../shared/schemas/device';
import type { DeviceCategory } from '../../../shared/schemas/terms';
import type { Check, Fix } from '../../../shared/schemas/vocabulary';
import { type BoardPrior, boardPrior } from './board-priors';
import { causeRows } from './cause-table';
import { checkResponse } from './check-responses';
import { fixResults } from './fix-results';
import { boardPictures, type SymptomOrder, symptomChances, symptomOrder } from './symptom-chances';
import type { SyndromeName } from './syndromes';

/** One cause with one of its fault pictures: the latent state that everything observed depends on. */
export type Cell = { cause: string; causeIndex: number; picture: SyndromeName; weight: number; symptoms: Float64Array };

/** A board's compiled model. Tables of chances are indexed [value][cell]. */
export type BoardModel = BoardPrior & {
  causes: string[];
  cells: Cell[];
  /** P(cell), summing to 1. */
  cellWeights: Float64Array;
  order: SymptomOrder;
  /** Checks and fixes that make sense on the board. */
  checks: Check[];
  fixes: Fix[];
  /** Parts of the board with the role. */
  partsOf(role: string): BoardPart[];
  /** Places, among the causes, of those that the fix addresses. */
  addressed(fix: string): number[];
  checkTable(check: string): Float64Array[];
  fixTable(fix: string): Float64Array[];
};

const rowOf = new Map(causeRows.map((row) => [row.cause, row]));
const causeOf = new Map(vocabulary.causes.map((cause) => [cause.slug, cause]));
const checkOf = new Map(vocabulary.checks.map((check) => [check.slug, check]));
const fixOf = new Map(vocabulary.fixes.map((fix) => [fix.slug, fix]));

/** The vocabulary's check or fix, or an error that names the unknown slug. */
export function knownCheck(slug: string): Check {
  const check = checkOf.get(slug);
  if (!check) throw new Error(`No check "${slug}" in the vocabulary.`);
  return check;
}
export function knownFix(slug: string): Fix {
  const fix = fixOf.get(slug);
  if (!fix) throw new Error(`No fix "${slug}" in the vocabulary.`);
  return fix;
}

/** `make` remembered by key. */
function remembered<V>(make: (key: string) => V): (key: string) => V {
  const kept = new Map<string, V>();
  return (key) => {
    const known = kept.get(key);
    if (known !== undefined) return known;
    const made = make(key);
    kept.set(key, made);
    return made;
  };
}

const orderOf = remembered((category) => symptomOrder(category as DeviceCategory));
/** Chances of a check's outcomes under a cause and picture don't depend on the board. */
const responseOf = remembered((key) => {
  const [check = '', cause = '', picture = ''] = key.split(' ');
  return checkResponse(knownCheck(check), causeOf.get(cause)!, picture as SyndromeName);
});

const transposed = (cells: readonly Cell[], size: number, row: (cell: Cell) => Float64Array): Float64Array[] => {
  const table = Array.from({ length: size }, () => new Float64Array(cells.length));
  cells.forEach((cell, c) => row(cell).forEach((chance, i) => (table[i]![c] = chance)));
  return table;
};

function compile(slug: string): BoardModel {
  const board = boardPrior(slug);
  const order = orderOf(board.category);
  const causes = [...board.prior.keys()];
  const cells = causes.flatMap((cause, causeIndex) => {
    const row = rowOf.get(cause)!;
    return boardPictures(row, board).map(
      ({ picture, weight }): Cell => ({
        cause,
        causeIndex,
        picture,
        weight: board.prior.get(cause)! * weight,
        symptoms: symptomChances(row, picture, order.slugs),
      }),
    );
  });
  const possible = new Set(causes);
  return {
    ...board,
    causes,
    cells,
    cellWeights: Float64Array.from(cells, (cell) => cell.weight),
    order,
    checks: vocabulary.checks.filter((check) => check.categories.includes(board.category) && !board.impossible.has(check.slug)),
    fixes: vocabulary.fixes.filter(
      (fix) => fix.categories.includes(board.category) && fix.addresses.some((cause) => possible.has(cause)),
    ),
    partsOf: (role) => board.parts.filter((part) => part.role === role),
    addressed: remembered((fix) => causes.flatMap((cause, i) => (knownFix(fix).addresses.includes(cause) ? [i] : []))),
    checkTable: remembered((check) =>
      transposed(cells, knownCheck(check).outcomes.length, (cell) => responseOf(`${check} ${cell.cause} ${cell.picture}`)),
    ),
    fixTable: remembered((fix) => transposed(cells, 5, (cell) => fixResults(knownFix(fix), cell.cause))),
  };
}

/** The compiled model of a board; compiled once. */
export const boardModel: (board: string) => BoardModel = remembered(compile);
