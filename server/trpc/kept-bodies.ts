import type { CasebookModel } from '../../shared/domain/casebook/casebook-model';

/** The body of an answer as it was sent, and what else is to be done when it is sent again. */
type KeptBody = { bytes: Uint8Array<ArrayBuffer>; headers: [string, string][]; again: () => void };

export type KeptBodies = {
  /** The body kept for this key, as long as the model counts what it counted when it was kept. */
  find(key: string, model: CasebookModel): KeptBody | undefined;
  keep(key: string, model: CasebookModel, body: KeptBody): void;
};

/**
 * Keeps whole answers, so that what was asked before is neither worked out nor written out as JSON again. Bounded by their bytes in
 * all: the one not asked for longest goes first. Every change of what is counted empties it.
 */
export function createKeptBodies(mostBytes: number): KeptBodies {
  const bodies = new Map<string, KeptBody>();
  let held = 0;
  let current: { model: CasebookModel; revision: number } | undefined;
  const follow = (model: CasebookModel) => {
    if (current?.model === model && current.revision === model.counts.revision) return;
    bodies.clear();
    held = 0;
    current = { model, revision: model.counts.revision };
  };
  const drop = (key: string) => {
    held -= bodies.get(key)?.bytes.length ?? 0;
    bodies.delete(key);
  };
  return {
    find(key, model) {
      follow(model);
      const body = bodies.get(key);
      if (body === undefined) return undefined;
      // A map lists its entries in the order in which they were put.
      bodies.delete(key);
      bodies.set(key, body);
      return body;
    },
    keep(key, model, body) {
      follow(model);
      drop(key);
      bodies.set(key, body);
      held += body.bytes.length;
      while (held > mostBytes) drop(bodies.keys().next().value as string);
    },
  };
}
