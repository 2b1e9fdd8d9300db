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
  const other = new Set(devicePath(layout, there));
  const common = path.filter((node) => other.has(node)).map((node) => layout.deviceDepths[node] as number);
  const deepest = Math.max(...common);
  if (deepest >= MODEL_DEPTH) return 'same-model';
  return deepest >= CATEGORY_DEPTH ? 'same-category' : 'other';
}

/** Whether the very part (role and part number) that a cause is about sits on both boards. False where a board is not known. */
export function sharesPart(layout: Layout, { asked, there, cause }: { asked: number; there: number; cause: number }): boolean {
  const part = layout.partClasses[asked * layout.causeCount + cause] ?? -1;
  return part >= 0 && part === layout.partClasses[there * layout.causeCount + cause];
}
