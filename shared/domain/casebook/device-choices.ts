import type { DeviceChoice } from '../../schemas/case-view';
import type { CasebookModel } from './casebook-model';

/** Models in the order of the catalogue, each followed by its board revisions; cases of a model include its boards'. */
export function deviceChoices(model: CasebookModel): DeviceChoice[] {
  return [...model.words.devices.values()].map(({ slug, label, level, model: device }) => {
    const node = model.coding.deviceOf(slug);
    return {
      slug,
      label,
      level,
      model: device.name,
      maker: device.maker.name,
      category: device.category,
      cases: node === undefined ? 0 : (model.counts.records[node] ?? 0),
    };
  });
}
