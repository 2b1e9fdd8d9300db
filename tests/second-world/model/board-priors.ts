import { vocabulary } from '../../../seed/vocabulary';
import type { BoardPart } from '../../../shared/schemas/device';
import type { DeviceCategory } from '../../../shared/schemas/terms';
import { hasRole, secondCatalogue } from '../catalogue/second-catalogue';
import { detail, normalDetail } from '../seeded-random';
import { type CauseRow, causeRows } from './cause-table';
import { possiblePictures } from './possible-pictures';

/** Share of all units with nothing wrong, and with the fault outside the unit, by category. */
const NO_FAULT_SHARE: Record<DeviceCategory, number> = {
  'home-computer': 0.04,
  console: 0.06,
  handheld: 0.03,
  monitor: 0.025,
  drive: 0.04,
  'arcade-board': 0.03,
};
const OUTSIDE_SHARE: Record<DeviceCategory, number> = {
  'home-computer': 0.17,
  console: 0.21,
  handheld: 0.09,
  monitor: 0.04,
  drive: 0.1,
  'arcade-board': 0.1,
};

/** Zipf: a cause at rank r weighs 1 / (r + OFFSET) ^ EXPONENT, which leaves a long tail of rare causes. */
const EXPONENT = 1.15;
const OFFSET = 1.6;
/** Spread (standard deviation of the logarithm) of what a part and a board multiply a cause's rate by. */
const PART_SPREAD = 0.35;
const BOARD_SPREAD = 0.55;
/** A cause of class C or D is missing from a board with this chance. */
const MISSING = { A: 0, B: 0, C: 0.06, D: 0.16 } as const;

/** Weaknesses that everybody who repairs these boards would know. */
const KNOWN_WEAKNESS: Record<string, Record<string, number>> = {
  'pellworth-lantern-issue-a': { 'ic-socket-oxidised': 3 },
  'pellworth-lantern-issue-c': { 'work-ram-stuck-bit': 2.5, 'video-generator-dead': 2 },
  'vessimer-cadet-m1': { 'backup-battery-leaked': 4 },
  'vessimer-cadet-m2': { 'start-capacitor-dried': 3, 'mains-filter-capacitor-failed': 4 },
  'odrani-tumble-t4': { 'filter-capacitor-leaked': 2.5 },
  'vessimer-halyard-h2': { 'laser-pickup-weak': 2.5, 'filter-capacitor-leaked': 2 },
  'odrani-minnow-a': { 'lcd-flex-bond-failed': 2.5 },
};

const causeBySlug = new Map(vocabulary.causes.map((cause) => [cause.slug, cause]));
const outsideRoles = new Set(vocabulary.roles.filter((role) => role.outside).map((role) => role.slug));

function zipfWeights(rows: readonly CauseRow[]): Map<string, number> {
  const ranked = rows.map((row) => ({ row, place: row.frequency.charCodeAt(0) + 1.4 * detail(`rank ${row.cause}`) }));
  ranked.sort((a, b) => a.place - b.place);
  return new Map(ranked.map(({ row }, rank) => [row.cause, (rank + 1 + OFFSET) ** -EXPONENT]));
}

/** P(cause | board): a Zipf rank among the board's causes, multiplied per part (shared by boards with that part) and per board. */
function priorOf(
  board: (typeof secondCatalogue.models)[number]['boards'][number],
  category: DeviceCategory,
): Map<string, number> {
  const partOfRole = new Map(board.parts.map((part) => [part.role, `${part.role} ${part.partNumber ?? 'plain'}`]));
  const roles = new Set(partOfRole.keys());
  const rows = causeRows.filter((row) => {
    const { cause, frequency } = row;
    const entry = causeBySlug.get(cause)!;
    if (!entry.categories.includes(category) || !hasRole(roles, entry.role)) return false;
    if (possiblePictures(row, { category, parts: board.parts }).length === 0) return false;
    return detail(`missing ${board.slug} ${cause}`) >= MISSING[frequency];
  });
  const weights = zipfWeights(rows);
  const groups = { none: new Map<string, number>(), outside: new Map<string, number>(), inside: new Map<string, number>() };
  for (const { cause } of rows) {
    const { role } = causeBySlug.get(cause)!;
    const part = PART_SPREAD * normalDetail(`part ${partOfRole.get(role) ?? role} ${cause}`);
    const own = BOARD_SPREAD * normalDetail(`board ${board.slug} ${cause}`);
    const known = KNOWN_WEAKNESS[board.slug]?.[cause] ?? 1;
    const group = cause === 'no-fault-found' ? groups.none : outsideRoles.has(role) ? groups.outside : groups.inside;
    group.set(cause, weights.get(cause)! * known * Math.exp(part + own));
  }
  const shares = { none: NO_FAULT_SHARE[category], outside: OUTSIDE_SHARE[category] };
  const prior = new Map<string, number>();
  for (const [name, share] of [
    ['none', shares.none],
    ['outside', shares.outside],
    ['inside', 1 - shares.none - shares.outside],
  ] as const) {
    const total = [...groups[name].values()].reduce((sum, weight) => sum + weight, 0);
    for (const [cause, weight] of groups[name]) prior.set(cause, (share * weight) / total);
  }
  return prior;
}

/** What the model knows of a board: category, what checks make no sense, and the prior of its causes. */
export type BoardPrior = {
  slug: string;
  model: string;
  category: DeviceCategory;
  parts: readonly BoardPart[];
  impossible: ReadonlySet<string>;
  prior: Map<string, number>;
};

/** All boards, in catalogue order. */
export const boardPriors: ReadonlyMap<string, BoardPrior> = new Map(
  secondCatalogue.models.flatMap((model) =>
    model.boards.map((board) => [
      board.slug,
      {
        slug: board.slug,
        model: model.slug,
        category: model.category,
        parts: board.parts,
        impossible: new Set(board.impossibleChecks),
        prior: priorOf(board, model.category),
      },
    ]),
  ),
);

/** The board, or an error that names the boards there are. */
export function boardPrior(slug: string): BoardPrior {
  const found = boardPriors.get(slug);
  if (!found) throw new Error(`No board "${slug}" in the second world; it has ${[...boardPriors.keys()].join(', ')}.`);
  return found;
}
