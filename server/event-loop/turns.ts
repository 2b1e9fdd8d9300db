/** Lets work begin one piece after the other, each in a turn of the event loop of its own. */
export type Turns = {
  /** Resolves when it is the caller's turn, in the order of asking; at once where nobody has had this turn of the loop. */
  next(): Promise<void>;
};

export type TurnOptions = {
  /** Runs a function in the next turn of the event loop. */
  schedule: (run: () => void) => void;
  /** Milliseconds, rising. */
  now: () => number;
  /** A turn of the loop that took longer than so many milliseconds had its work: nothing more begins in the one after it. */
  long: number;
  /** However long the turns are, something begins in one of so many. */
  mostPassed: number;
};

/**
 * The database, the renderer and the procedures answer by promises alone, so all that is ready runs in one turn of the event loop: with
 * sixteen requests at hand that is their work together, and timers, sockets and the other requests wait for all of it. Here
 * they begin one at a time, and none while what began before still fills the loop.
 */
export function createTurns({ schedule, now, long, mostPassed }: TurnOptions): Turns {
  const waiting: (() => void)[] = [];
  let isRunning = false;
  let began = 0;
  let passed = 0;
  const run = () => {
    const took = now() - began;
    if (took > long && passed + 1 < mostPassed) passed += 1;
    else {
      passed = 0;
      waiting.shift()?.();
    }
    if (waiting.length === 0) isRunning = false;
    else again();
  };
  const again = () => {
    isRunning = true;
    began = now();
    schedule(run);
  };
  return {
    next: () =>
      new Promise((resolve) => {
        waiting.push(resolve);
        if (!isRunning) again();
      }),
  };
}
