import { boardLabel } from '../../shared/domain/casebook/board-label';
import type { DeviceCatalogue } from '../../shared/schemas/device';

/** One model with its boards, as the device list shows it. */
export type DeviceGroup = { label: string; options: { slug: string; label: string }[] };

/** The catalogue as groups for a device list: each model as a whole, then its board revisions. */
export function deviceGroups(catalogue: DeviceCatalogue): DeviceGroup[] {
  return catalogue.models.map((model) => ({
    label: model.name,
    options: [
      { slug: model.slug, label: `${model.name}, any board` },
      ...model.boards.map((board) => ({ slug: board.slug, label: boardLabel(model, board) })),
    ],
  }));
}
