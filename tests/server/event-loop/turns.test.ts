import { describe, expect, it } from 'vitest';
import { inSlices } from '../../../server/event-loop/take-turns';
import { createTurns } from '../../../server/event-loop/turns';

/** Turns on a loop and a clock that the test moves by hand. */
function byHand() {
  let at = 0;
  let next: (() => void) | undefined;
  const turns = createTurns({ schedule: (run) => (next = run), now: () => at, long: 20, mostPassed: 3 });
  const begun: string[] = [];
  return {
    begun,
    ask: (name: string) => void turns.next().then(() => begun.push(name)),
    /** One turn of the loop that takes so long. */
    turn: async (took = 1) => {
      at += took;
      const run = next;
      next = undefined;
      run?.();
      await Promise.resolve();
      return run !== undefined;
    },
  };
}

describe('turns of the event loop', () => {
  it('let one piece of work begin in each, in the order of asking', async () => {
    const { begun, ask, turn } = byHand();
    for (const name of ['a', 'b', 'c']) ask(name);
    expect(begun).toEqual([]);
    await turn();
    expect(begun).toEqual(['a']);
    ask('d');
    await turn();
    await turn();
    await turn();
    expect(begun).toEqual(['a', 'b', 'c', 'd']);
    expect(await turn()).toBe(false);
    ask('e');
    expect(await turn()).toBe(true);
    expect(begun.at(-1)).toBe('e');
  });

  it('let nothing begin after a long one, but at least in every third', async () => {
    const { begun, ask, turn } = byHand();
    for (const name of ['a', 'b', 'c']) ask(name);
    await turn(50);
    expect(begun).toEqual([]);
    await turn(5);
    expect(begun).toEqual(['a']);
    for (const expected of [1, 1, 2, 2, 2, 3]) {
      await turn(50);
      expect(begun).toHaveLength(expected);
    }
  });
});

describe('work in slices', () => {
  it('gives back what the work gives back, and leaves the loop free after some milliseconds of it', async () => {
    let at = 0;
    let others = 0;
    const ticking = setInterval(() => (others += 1), 0);
    const seen: number[] = [];
    const work = function* () {
      for (let step = 1; step <= 40; step += 1) {
        at += 4;
        seen.push(others);
        // As long as a slice is, so that the timer is due whenever the loop is free.
        const end = performance.now() + 1.2;
        while (performance.now() < end);
        yield;
      }
      return 'done';
    };
    expect(await inSlices(work(), () => at)).toBe('done');
    clearInterval(ticking);
    expect(seen).toHaveLength(40);
    expect(new Set(seen).size).toBeGreaterThan(5);
  });

  it('hands on what the work throws', async () => {
    const work = function* (): Generator<void, never> {
      yield;
      throw new Error('no such cause');
    };
    await expect(inSlices(work())).rejects.toThrow('no such cause');
  });

  it('takes no turn for what is short', async () => {
    let turned = false;
    setImmediate(() => (turned = true));
    // biome-ignore lint/correctness/useYield: nothing to wait for
    await inSlices((function* () { return 1; })());
    expect(turned).toBe(false);
  });
});
