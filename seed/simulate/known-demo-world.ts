import type { KnownWorld } from '../../server/casebook/known-world';
import { demoWorld } from '../demo-world';
import { createBench, HABITS, PLAIN_HABITS, type PolicyName } from './bench-policies';
import { repairLines, summariseRepairs } from './repair-report';
import { simulateUnit } from './simulate-unit';

const boards = new Set(demoWorld.catalogue.models.flatMap((model) => model.boards.map((board) => board.slug)));

const POLICIES: readonly PolicyName[] = ['plan', 'first check', ...HABITS, ...PLAIN_HABITS];

/** The demo's world as the command line knows it. Boards come to the bench as often as among the casebook's own cases. */
export const knownDemoWorld: KnownWorld = {
  truePosterior(board, findings) {
    if (!boards.has(board)) return null;
    try {
      return demoWorld.truePosterior(board, findings);
    } catch (error) {
      // A misnoted list can be impossible in the model; there is nothing to compare with then.
      if (error instanceof Error && /impossible/i.test(error.message)) return null;
      throw error;
    }
  },
  simulateRepairs(model, { units, seed, onProgress }) {
    const { coding, entries } = model;
    const brought = [...entries.values()].flatMap(({ coded }) => coding.devices[coded.device]?.slug ?? []).filter((slug) => boards.has(slug));
    const bench = createBench({ model });
    const results = Array.from({ length: units }, (_, number) => {
      const result = simulateUnit(demoWorld, bench, { number, seed, boards: brought, policies: POLICIES });
      onProgress(number + 1);
      return result;
    });
    return summariseRepairs(results);
  },
  repairLines,
};
