import type { CasebookModel } from '../../shared/domain/casebook/casebook-model';

/** The model that an answer was counted from, at the revision that it had. */
type Counted = { model: CasebookModel; revision: number };

export type KeptBodies<B extends { size: number }> = {
  /** The body kept for this key, as long as the model counts what it counted when it was kept. */
  find(key: string, model: CasebookModel): B | undefined;
  /** Keeps a body; one that was counted from what is no longer current is not kept. */
  keep(key: string, counted: Counted, body: B): void;
};

/**
 * Keeps whole answers, so that what was asked before is neither worked out nor written out again. Bounded by their bytes in all: the
 * one not asked for longest goes first. Every change of what is counted empties it.
 */
export function createKeptBodies<B extends { size: number }>(mostBytes: number): KeptBodies<B> {
  const bodies = new Map<string, { body: B; size: number }>();
  let held = 0;
  let current: Counted | undefined;
  const follow = (model: CasebookModel) => {
    if (current?.model === model && current.revision === model.counts.revision) return;
    bodies.clear();
    held = 0;
    current = { model, revision: model.counts.revision };
  };
  const drop = (key: string) => {
    held -= bodies.get(key)?.size ?? 0;
    bodies.delete(key);
  };
  return {
    find(key, model) {
      follow(model);
      const entry = bodies.get(key);
      if (entry === undefined) return undefined;
      // A map lists its entries in the order in which they were put.
      bodies.delete(key);
      bodies.set(key, entry);
      return entry.body;
    },
    keep(key, { model, revision }, body) {
      if (model.counts.revision !== revision) return;
      follow(model);
      drop(key);
      bodies.set(key, { body, size: body.size });
      held += body.size;
      while (held > mostBytes) drop(bodies.keys().next().value as string);
    },
  };
}
