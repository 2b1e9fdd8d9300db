import { setTimeout } from 'node:timers/promises';
import type { Lane } from './lane';

const PAUSE_MS = 60;

/** Makes the search index anew again and again, while the others have it follow what they change. */
export async function indexLane(lane: Lane): Promise<never> {
  for (;;) {
    lane.about('index', 'reindex');
    await lane.search.reindex('sqlite');
    lane.done('index', 'made anew');
    await setTimeout(PAUSE_MS);
  }
}
