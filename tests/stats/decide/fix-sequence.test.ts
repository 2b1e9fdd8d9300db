import { describe, expect, it } from 'vitest';
import { bestFixSequence, sequenceCost } from '../../../shared/stats/decide/fix-sequence';
import { readyProblem } from '../../../shared/stats/decide/plan-problem';
import { disjointFixes } from './disjoint-fixes';

describe('sequenceCost', () => {
  it('prices four orders (derivable from cost x chance left: by chance 11.0, by cost 9.4, worst 12.4, by ratio 8.5)', () => {
    const problem = readyProblem(disjointFixes([0.4, 0.3, 0.2, 0.1], [8, 4, 1, 3]));
    expect(sequenceCost(problem, [2, 1, 0, 3])).toBeCloseTo(8.5, 12);
    expect(sequenceCost(problem, [0, 1, 2, 3])).toBeCloseTo(11, 12);
    expect(sequenceCost(problem, [2, 3, 1, 0])).toBeCloseTo(9.4, 12);
    expect(sequenceCost(problem, [3, 0, 1, 2])).toBeCloseTo(12.4, 12);
  });

  it('prices two jobs by difference at 23 and by ratio at 22 (Roughgarden, Algorithms Illuminated 3, 2019, ch. 13)', () => {
    const problem = readyProblem(disjointFixes([3 / 4, 1 / 4], [5, 2]));
    expect(4 * sequenceCost(problem, [1, 0])).toBeCloseTo(23, 12);
    expect(4 * sequenceCost(problem, [0, 1])).toBeCloseTo(22, 12);
  });

  it('prices all six orders of the board-test exercise (textbook problem; by enumeration)', () => {
    const handOverCost = 1000;
    const problem = readyProblem({
      posterior: Float64Array.of(1, 0),
      fixes: [
        [0.125, 51.75],
        [0.075, 2],
        [0.14, 52.4],
      ].map(([fails, partCost]) => ({ cure: Float64Array.of(fails!, 0), minutes: 0, partCost: partCost!, stage: 0 })),
      checks: [],
      hourValue: 0,
      handOverCost,
    });
    const passes = 0.875 * 0.925 * 0.86;
    const [x, y, z] = [0, 1, 2];
    for (const [order, cost] of [
      [[y, z, x], 91.637125],
      [[y, x, z], 92.28],
      [[z, y, x], 95.287125],
      [[x, y, z], 95.91125],
      [[z, x, y], 98.41],
      [[x, z, y], 99.105],
    ] as const) {
      expect(sequenceCost(problem, order) - handOverCost * passes).toBeCloseTo(cost, 9);
    }
  });

  it('refuses a fix that is not there', () => {
    expect(() => sequenceCost(readyProblem(disjointFixes([1], [1])), [3])).toThrow(RangeError);
  });
});

describe('bestFixSequence', () => {
  it('stops where handing over is cheaper (derivable: .5/1, then .5 left, 9 > .5 x 10 is not worth it)', () => {
    const problem = readyProblem({ ...disjointFixes([0.5, 0.25], [1, 9]), handOverCost: 10 });
    expect(bestFixSequence(problem)).toEqual({ cost: 6, order: [0] });
  });

  it('goes on through a fix that is not worth it by itself where the next one makes up for it', () => {
    // Handing over 100. First .6/60: 60 + 40 = 100, a draw. Then .4/10: 60 + 4 = 64; reversed 10 + .6 x 60 = 46.
    const problem = readyProblem({ ...disjointFixes([0.6, 0.4], [60, 10]), handOverCost: 100 });
    expect(bestFixSequence(problem)).toEqual({ cost: 46, order: [1, 0] });
  });

  it('re-ranks after a failure: a fix that addresses the same causes loses its chance', () => {
    const problem = readyProblem({
      posterior: Float64Array.of(0.6, 0.4, 0),
      fixes: [
        { cure: Float64Array.of(1, 0, 0), minutes: 10, partCost: 0, stage: 0 },
        { cure: Float64Array.of(1, 0, 0), minutes: 11, partCost: 0, stage: 0 },
        { cure: Float64Array.of(0, 1, 0), minutes: 10, partCost: 0, stage: 0 },
      ],
      checks: [],
      hourValue: 60,
      handOverCost: 500,
    });
    expect(bestFixSequence(problem).order).toEqual([0, 2]);
  });
});
