import type { Counts } from './counts';
import { devicePath } from './findings';

/**
 * The part of the counts that answers for one device: everything kept per device node, and the rows of value counts on
 * the device's path and of the parts that it carries. Estimates for this device (or a node above it) are the very
 * same; for other devices they are not. Shares its arrays with the whole: read it, never change it.
 */
export function sliceCounts(counts: Counts, device: number): Counts {
  const { layout } = counts;
  const path = new Set(devicePath(layout, device));
  const nodes = layout.deviceParents.length;
  const C = layout.causeCount;
  return {
    ...counts,
    nodeRows: kept(counts.nodeRows, (key) => path.has(Math.floor(key / C))),
    partRows: kept(counts.partRows, (key) => {
      const cause = Math.floor(key / nodes) % C;
      const part = Math.floor(key / nodes / C);
      return path.has(key % nodes) && layout.partClasses[device * C + cause] === part;
    }),
  };
}

function kept(rows: ReadonlyMap<number, number>, wanted: (key: number) => boolean): Map<number, number> {
  return new Map([...rows].filter(([key]) => wanted(key)));
}
