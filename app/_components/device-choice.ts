import { boardLabel } from '../../shared/domain/casebook/board-label';
import type { DeviceCatalogue } from '../../shared/schemas/device';

/** One model with its boards, as the device list shows it. */
export type DeviceGroup = { label: string; options: { slug: string; label: string }[] };

/** Groups live as long as the catalogue that they were made of, which does not change. */
const known = new WeakMap<DeviceCatalogue, DeviceGroup[]>();

/** The catalogue as groups for a device list: each model as a whole, then its board revisions. Kept with the catalogue: read, never change. */
export function deviceGroups(catalogue: DeviceCatalogue): DeviceGroup[] {
  const groups = known.get(catalogue) ?? groupsOf(catalogue);
  known.set(catalogue, groups);
  return groups;
}

function groupsOf(catalogue: DeviceCatalogue): DeviceGroup[] {
  return catalogue.models.map((model) => ({
    label: model.name,
    options: [
      { slug: model.slug, label: `${model.name}, any board` },
      ...model.boards.map((board) => ({ slug: board.slug, label: boardLabel(model, board) })),
    ],
  }));
}
