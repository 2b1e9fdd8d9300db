import { createTurns, type Turns } from './turns';

/** Milliseconds of work in one turn of the event loop after which the loop comes first. */
const LONG = 20;
/** A piece of work goes on at least in one of so many turns of the loop. */
const MOST_PASSED = 5;
/** Milliseconds of one slice of a longer piece of work. */
const SLICE = 10;

/** The bundler may load this module several times in one process; there is one event loop. */
const kept = globalThis as typeof globalThis & { secondBenchTurns?: { requests: Turns; slices: Turns } };

function turns() {
  const now = () => performance.now();
  const schedule = (run: () => void) => void setImmediate(run);
  kept.secondBenchTurns ??= {
    requests: createTurns({ schedule, now, long: LONG, mostPassed: MOST_PASSED }),
    slices: createTurns({ schedule, now, long: Number.POSITIVE_INFINITY, mostPassed: 1 }),
  };
  return kept.secondBenchTurns;
}

/** Resolves when the next request may be worked on. */
export function requestTurn(): Promise<void> {
  return turns().requests.next();
}

/**
 * Does work that says by `yield` where it may be left for a while, so that nobody waits for the whole of it: some
 * milliseconds of one such work in each turn of the event loop.
 */
export async function inSlices<T>(work: Iterator<unknown, T>, now: () => number = () => performance.now()): Promise<T> {
  for (;;) {
    const end = now() + SLICE;
    do {
      const step = work.next();
      if (step.done) return step.value;
    } while (now() < end);
    await turns().slices.next();
  }
}
