import { COUNT_UNIT, type Counts } from './counts';
import { devicePath } from './findings';
import type { Layout } from './layout';
import type { Settings } from './settings';
import { unlistedShare } from './unlisted-share';
import { PART_PLACE } from './value-steps';
import { limitedWorth } from './value-shares';

/** P(cause | device) with the unlisted share last, and how many records each cause's share is worth. */
export type CausePrior = { probability: Float64Array; worth: Float64Array };

/** Records at one step on the way to the device: with the cause, and in all (whose cause was found). */
export type PriorStep = { place: number; cases: number; exposure: number };

/**
 * Prior probabilities of causes on a device. Each cause's rate is carried from far to near (other categories, makers,
 * models, boards, then boards with the very same part, then the board itself); every record counts once, and what is
 * known so far enters the next step worth at most 1/(1/worth + 1/concentration) records. Rates are then scaled to sum
 * to 1 less the unlisted share. Causes on no record have probability 0: their mass is the unlisted share.
 */
export function causePrior(counts: Counts, settings: Settings, boardsOfPart: readonly number[][], device: number): CausePrior {
  const { layout } = counts;
  const C = layout.causeCount;
  const path = devicePath(layout, device);
  const known = knownCauses(counts, settings);
  const prior = { probability: new Float64Array(C + 1), worth: new Float64Array(C + 1) };
  let total = 0;
  for (const c of known) {
    const impossible = layout.impossible?.[device * C + c] === 1;
    const rate = carryRate(priorSteps(counts, { boardsOfPart, path, cause: c }), {
      start: 1 / known.length,
      limits: settings.prior,
      impossible,
    });
    prior.probability[c] = rate.share;
    prior.worth[c] = rate.worth;
    total += rate.share;
  }
  const unlisted = known.length === 0 ? 1 : unlistedShare(counts, settings, device);
  for (const c of known) prior.probability[c] = ((prior.probability[c] as number) / total) * (1 - unlisted);
  prior.probability[C] = unlisted;
  prior.worth[C] = (counts.records[0] as number) + settings.unlistedConcentration;
  return prior;
}

/** Causes that can be named: those on at least one record; all of them for a plain table or an empty casebook. */
function knownCauses(counts: Counts, settings: Settings): number[] {
  const all = Array.from({ length: counts.layout.causeCount }, (_, c) => c);
  const seen = all.filter((c) => (counts.causeRecords[c] as number) > 0);
  return settings.unlisted && seen.length > 0 ? seen : all;
}

/** Runs a share through its steps; where the catalogue rules the cause out, it is cut before the device's own records. */
export function carryRate(
  steps: readonly PriorStep[],
  { start, limits, impossible }: { start: number; limits: Settings['prior']; impossible: boolean },
): { share: number; worth: number } {
  let share = start;
  let worth = limits.root;
  steps.forEach(({ place, cases, exposure }, i) => {
    if (impossible && i === steps.length - 1) share *= limits.impossible;
    worth = limitedWorth(worth, place, limits);
    share = (cases + worth * share) / (exposure + worth);
    worth += exposure;
  });
  return { share, worth };
}

/** The steps from the root to the last node of `path` for one cause, in records. */
export function priorSteps(
  counts: Counts,
  { boardsOfPart, path, cause }: { boardsOfPart: readonly number[][]; path: readonly number[]; cause: number },
): PriorStep[] {
  const { layout } = counts;
  const last = path.length - 1;
  const device = path[last] as number;
  const part = layout.partClasses[device * layout.causeCount + cause] as number;
  const mates = part < 0 ? [] : matesByLevel(counts, { boards: boardsOfPart[part] as number[], path, cause });
  const steps: PriorStep[] = [];
  const mateTotal = { cases: 0, exposure: 0 };
  for (let level = 0; level <= last; level += 1) {
    const node = path[level] as number;
    const nearer = level < last ? (path[level + 1] as number) : -1;
    const mate = mates[level] ?? { cases: 0, exposure: 0 };
    if (level === last && part >= 0) steps.push({ place: PART_PLACE, ...mateTotal });
    mateTotal.cases += mate.cases;
    mateTotal.exposure += mate.exposure;
    steps.push({
      place: (layout.deviceDepths[node] as number) - 1,
      cases: casesAt(counts, node, cause) - (nearer < 0 ? 0 : casesAt(counts, nearer, cause)) - mate.cases,
      exposure: exposureAt(counts, node) - (nearer < 0 ? 0 : exposureAt(counts, nearer)) - mate.exposure,
    });
  }
  return steps;
}

function casesAt(counts: Counts, node: number, cause: number): number {
  return (counts.causeWeights[node * counts.layout.causeCount + cause] as number) / COUNT_UNIT;
}

function exposureAt(counts: Counts, node: number): number {
  return (counts.resolvedWeights[node] as number) / COUNT_UNIT;
}

/** Cases and exposure of other boards with the same part, by the level of the path at which they join. */
function matesByLevel(
  counts: Counts,
  { boards, path, cause }: { boards: readonly number[]; path: readonly number[]; cause: number },
): { cases: number; exposure: number }[] {
  const levels = path.map(() => ({ cases: 0, exposure: 0 }));
  const own = path[path.length - 1];
  for (const board of boards) {
    if (board === own) continue;
    let node = board;
    while (!path.includes(node)) node = counts.layout.deviceParents[node] as number;
    const level = levels[path.indexOf(node)] as { cases: number; exposure: number };
    level.cases += casesAt(counts, board, cause);
    level.exposure += exposureAt(counts, board);
  }
  return levels;
}

/** For each part class the boards that carry it. */
export function boardsByPart(layout: Layout): number[][] {
  const boards: number[][] = Array.from({ length: layout.partClassCount }, () => []);
  layout.partClasses.forEach((part, i) => {
    if (part < 0) return;
    const board = Math.floor(i / layout.causeCount);
    const known = boards[part] as number[];
    if (known[known.length - 1] !== board) known.push(board);
  });
  return boards;
}
