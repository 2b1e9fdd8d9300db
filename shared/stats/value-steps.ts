import { type Counts, partRowKey } from './counts';
import { devicePath } from './findings';
import { readCells } from './sparse-rows';

/**
 * One step from far to near: its records are those in the rows `add` less those in the rows `less` of the counts. `place`
 * says what limits what is known so far: 0-3 the category, maker, model, board level, 4 the shared part, -1 nothing (the root).
 */
export type ValueStep = { place: number; add: number[]; less: number[] };

/** Place number of the step that takes in other boards with the very same part. */
export const PART_PLACE = 4;

/**
 * The steps from the root to a device for one cause. Every record of the cause is in exactly one step: other
 * categories, makers, models, boards without the part; then other boards with the very same part; then the device.
 */
export function valueSteps(counts: Counts, device: number, cause: number): ValueStep[] {
  const { layout } = counts;
  const path = devicePath(layout, device);
  const part = layout.partClasses[device * layout.causeCount + cause] as number;
  const full = path.map((node) => counts.nodeRows.get(node * layout.causeCount + cause));
  const last = path.length - 1;
  // A board's own records are all of its one part.
  const mates = path.map((node, level) => {
    if (part < 0) return undefined;
    return level === last ? full[last] : counts.partRows.get(partRowKey(layout, { part, cause, node }));
  });
  const steps = path.map((node, level) => {
    const place = (layout.deviceDepths[node] as number) - 1;
    if (level === last) return { place, add: [full[level]], less: [] };
    return { place, add: [full[level], mates[level + 1]], less: [full[level + 1], mates[level]] };
  });
  if (part >= 0) steps.splice(last, 0, { place: PART_PLACE, add: [mates[0]], less: [mates[last]] });
  const known = (rows: (number | undefined)[]) => rows.filter((row) => row !== undefined);
  return steps.map(({ place, add, less }) => ({ place, add: known(add), less: known(less) }));
}

/** Weights of a step at the flat values from `first` to before `end`, in 600ths, into `into` from its beginning. */
export function stepCounts(counts: Counts, step: ValueStep, { first, end, into }: { first: number; end: number; into: Float64Array }): void {
  into.fill(0, 0, end - first);
  for (const row of step.add) readCells(counts.rows, row, { first, end, into, sign: 1 });
  for (const row of step.less) readCells(counts.rows, row, { first, end, into, sign: -1 });
}
