import { describe, expect, it } from 'vitest';
import { createBracketBoard } from '../../shared/stats/bracket-board';

/** One listed cause stated at `p` with a bracket of 0.1 to either side; the rest on the unlisted one. */
const stated = (p: number) => ({
  probability: Float64Array.of(p, 1 - p),
  low: Float64Array.of(p - 0.1, 0.9 - p),
  high: Float64Array.of(p + 0.1, 1.1 - p),
});

describe('createBracketBoard', () => {
  it('says how often a cause stated at a chance it was, and whether that lies in the bracket', () => {
    const board = createBracketBoard();
    // Stated 0.35 for cause 0; it was in 4 of 10. The other cause, stated 0.65, in 6 of 10: both within 0.1.
    for (let i = 0; i < 10; i += 1) board.add(stated(0.35), [{ cause: i < 4 ? 0 : 1, share: 1 }]);
    const brackets = board.brackets();
    expect(brackets).toMatchObject({ pairs: 20, held: 1 });
    expect(brackets?.width).toBeCloseTo(0.2, 12);
    expect(brackets?.bins[3]).toMatchObject({ count: 10, observed: 0.4 });
    expect(brackets?.bins[3]?.stated).toBeCloseTo(0.35, 12);
  });

  it('counts the pairs of a bin as not held where the bracket misses what was observed', () => {
    const board = createBracketBoard();
    for (let i = 0; i < 10; i += 1) board.add(stated(0.35), [{ cause: i < 9 ? 0 : 1, share: 1 }]);
    expect(board.brackets()?.held).toBe(0);
  });

  it('shares a record of two causes between them, and passes over chances below one in a hundred', () => {
    const board = createBracketBoard();
    board.add(stated(0.005), [
      { cause: 0, share: 0.5 },
      { cause: 1, share: 0.5 },
    ]);
    expect(board.brackets()).toMatchObject({ pairs: 1 });
    expect(board.brackets()?.bins[9]?.observed).toBe(0.5);
  });

  it('has nothing to say of nothing', () => {
    expect(createBracketBoard().brackets()).toBeNull();
  });
});
