import type { Board, DeviceCatalogue } from '../../schemas/device';
import type { DeviceCategory } from '../../schemas/terms';

export type DeviceLevel = 'any' | 'category' | 'maker' | 'model' | 'board';

/** A node of the device tree; its position in the list is its number in the layout. */
export type DeviceNode = {
  level: DeviceLevel;
  /** Slug of a board or model; of a category or maker, which may repeat across categories. */
  slug: string;
  parent: number;
  category: DeviceCategory | null;
  board: Board | null;
};

export const LEVEL_DEPTHS: Record<DeviceLevel, number> = { any: 0, category: 1, maker: 2, model: 3, board: 4 };

/** The catalogue as a tree, parents before children: any device, categories, makers, models, board revisions. */
export function deviceTree(catalogue: DeviceCatalogue): DeviceNode[] {
  const nodes: DeviceNode[] = [{ level: 'any', slug: 'any', parent: -1, category: null, board: null }];
  const known = new Map<string, number>();
  const place = (key: string, node: DeviceNode): number => {
    const found = known.get(key);
    if (found !== undefined) return found;
    known.set(key, nodes.length);
    nodes.push(node);
    return nodes.length - 1;
  };
  for (const model of catalogue.models) {
    const { category } = model;
    const top = place(`category ${category}`, { level: 'category', slug: category, parent: 0, category, board: null });
    const maker = place(`maker ${category} ${model.maker.slug}`, {
      level: 'maker',
      slug: model.maker.slug,
      parent: top,
      category,
      board: null,
    });
    const at = place(`model ${model.slug}`, { level: 'model', slug: model.slug, parent: maker, category, board: null });
    for (const board of model.boards) {
      place(`board ${board.slug}`, { level: 'board', slug: board.slug, parent: at, category, board });
    }
  }
  return nodes;
}
