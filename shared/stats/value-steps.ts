import { type Counts, partRowKey } from './counts';
import { devicePath } from './findings';

type Row = Int32Array | undefined;

/**
 * One step from far to near: its records are those in the rows `add` less those in the rows `less`. `place` says what
 * limits what is known so far: 0-3 the category, maker, model, board level, 4 the shared part, -1 nothing (the root).
 */
export type ValueStep = { place: number; add: Row[]; less: Row[] };

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
  const mates = path.map((node) => (part < 0 ? undefined : counts.partRows.get(partRowKey(layout, { part, cause, node }))));
  const last = path.length - 1;
  const steps = path.map((node, level): ValueStep => {
    const place = (layout.deviceDepths[node] as number) - 1;
    if (level === last) return { place, add: [full[level]], less: [] };
    return { place, add: [full[level], mates[level + 1]], less: [full[level + 1], mates[level]] };
  });
  if (part >= 0) steps.splice(last, 0, { place: PART_PLACE, add: [mates[0]], less: [mates[last]] });
  return steps.map(({ place, add, less }) => ({ place, add: add.filter((row) => row), less: less.filter((row) => row) }));
}

/** Weight of a step at one flat value, in 600ths. */
export function stepCount(step: ValueStep, flat: number): number {
  let n = 0;
  for (const row of step.add) n += (row as Int32Array)[flat] as number;
  for (const row of step.less) n -= (row as Int32Array)[flat] as number;
  return n;
}
