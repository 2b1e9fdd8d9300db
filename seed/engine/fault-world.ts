import type { Board, DeviceCatalogue, DeviceModel } from '../../shared/schemas/device';
import type { Vocabulary } from '../../shared/schemas/vocabulary';
import type { BoardModel } from './board-model';
import { compileBoard } from './compile-board';
import type { FaultModel } from './fault-model';

/** What cases are drawn from: the written model, and its numbers per board, made when first asked for. */
export type FaultWorld = {
  readonly vocabulary: Vocabulary;
  readonly catalogue: DeviceCatalogue;
  readonly model: FaultModel;
  /** Board slugs, in the order of the catalogue. */
  readonly boards: readonly string[];
  /** Model and board of a slug. Throws where the catalogue has no such board. */
  place(board: string): { device: DeviceModel; board: Board };
  numbers(board: string): BoardModel;
};

/** Joins a written fault model to a vocabulary and a catalogue. */
export function createFaultWorld(input: Pick<FaultWorld, 'vocabulary' | 'catalogue' | 'model'>): FaultWorld {
  const places = new Map(
    input.catalogue.models.flatMap((device) => device.boards.map((board) => [board.slug, { device, board }] as const)),
  );
  const compiled = new Map<string, BoardModel>();
  const place: FaultWorld['place'] = (slug) => {
    const found = places.get(slug);
    if (!found) throw new Error(`The catalogue has no board ${slug}.`);
    return found;
  };
  const numbers: FaultWorld['numbers'] = (slug) => {
    const known = compiled.get(slug) ?? compileBoard({ ...input, ...place(slug) });
    compiled.set(slug, known);
    return known;
  };
  return { ...input, boards: [...places.keys()], place, numbers };
}
