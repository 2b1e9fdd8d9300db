import { devicePath } from './findings';
import type { Layout } from './layout';

/** How near a record's device is to the one asked about; each holds only where no nearer one does. */
export type DeviceNearness = 'same-board' | 'same-model' | 'same-category' | 'other';

const MODEL_DEPTH = 3;
const BOARD_DEPTH = 4;
const CATEGORY_DEPTH = 1;

/** Nearness of a record's device. A model without a board revision is as near as its boards are to each other. */
export function deviceNearness(layout: Layout, asked: number, there: number): DeviceNearness {
  if (asked <= 0) return 'other';
  if (asked === there && layout.deviceDepths[asked] === BOARD_DEPTH) return 'same-board';
  const path = devicePath(layout, asked);
  let common = there;
  while (!path.includes(common)) common = layout.deviceParents[common] as number;
  return byCommonDepth(layout.deviceDepths[common] as number);
}

/** Nearness of every device node to the one asked about. */
export function nearnessOfAll({ deviceParents, deviceDepths }: Layout, asked: number): DeviceNearness[] {
  // The deepest node that a device shares with the path to the one asked about: its own, or its parent's.
  const onPath = new Uint8Array(deviceParents.length);
  for (let node = asked; node >= 0; node = deviceParents[node] as number) onPath[node] = 1;
  const depth = new Uint8Array(deviceParents.length);
  return Array.from(deviceParents, (parent, node) => {
    depth[node] = onPath[node] === 1 || parent < 0 ? (deviceDepths[node] as number) : (depth[parent] as number);
    if (asked <= 0) return 'other';
    if (node === asked && deviceDepths[node] === BOARD_DEPTH) return 'same-board';
    return byCommonDepth(depth[node] as number);
  });
}

function byCommonDepth(depth: number): DeviceNearness {
  if (depth >= MODEL_DEPTH) return 'same-model';
  return depth >= CATEGORY_DEPTH ? 'same-category' : 'other';
}

/** Whether the very part (role and part number) that a cause is about sits on both boards. False where a board is not known. */
export function sharesPart(layout: Layout, { asked, there, cause }: { asked: number; there: number; cause: number }): boolean {
  const part = layout.partClasses[asked * layout.causeCount + cause] ?? -1;
  return part >= 0 && part === layout.partClasses[there * layout.causeCount + cause];
}
