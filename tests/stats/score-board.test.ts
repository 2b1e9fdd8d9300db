import { describe, expect, it } from 'vitest';
import { createScoreBoard } from '../../shared/stats/score-board';

describe('createScoreBoard', () => {
  // G. W. Brier, Monthly Weather Review 78 (1950), 1-3: ten forecasts of rain, rain on three days; the vector of days from
  // memory and confirmed by recomputing: 0.19, against 0.42 for always forecasting the base rate.
  it("gives Brier's scores for his rain forecasts", () => {
    const rain = [2, 3, 4];
    const score = (forecasts: number[]) => {
      const board = createScoreBoard();
      forecasts.forEach((p, i) => {
        board.add({ probability: Float64Array.of(p, 1 - p), target: [{ cause: rain.includes(i + 1) ? 0 : 1, share: 1 }] });
      });
      return board.scores();
    };
    expect(score([0.7, 0.9, 0.8, 0.4, 0.2, 0, 0, 0, 0, 0.1]).brier).toBeCloseTo(0.19, 12);
    expect(score(new Array<number>(10).fill(0.3)).brier).toBeCloseTo(0.42, 12);
  });

  it('measures calibration as the gap between confidence and accuracy', () => {
    const board = createScoreBoard();
    for (let i = 0; i < 10; i += 1) board.add({ probability: Float64Array.of(0.9, 0.1), target: [{ cause: i < 7 ? 0 : 1, share: 1 }] });
    expect(board.scores().ece).toBeCloseTo(0.2, 12);
    expect(board.scores().accuracy).toBeCloseTo(0.7, 12);
    expect(board.scores().logLoss).toBeCloseTo(-0.7 * Math.log(0.9) - 0.3 * Math.log(0.1), 12);
  });

  it('counts a record of two causes half for each', () => {
    const board = createScoreBoard();
    board.add({ probability: Float64Array.of(0.6, 0.3, 0.1), target: [{ cause: 0, share: 0.5 }, { cause: 2, share: 0.5 }] });
    expect(board.scores().accuracy).toBe(0.5);
    expect(board.scores().top3).toBe(1);
  });
});
