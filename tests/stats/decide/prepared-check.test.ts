import { describe, expect, it } from 'vitest';
import { expectedBits, posteriorAfter, predictive } from '../../../shared/stats/decide/check-model';
import { preparedBits, preparedCheck, preparedOutcome } from '../../../shared/stats/decide/prepared-check';
import { createRandom } from '../../../shared/stats/random';

/** Shares that sum to 1, some of them 0. */
function shares(random: () => number, count: number): number[] {
  const raw = Array.from({ length: count }, () => (random() < 0.15 ? 0 : random() ** 4));
  raw[0] = 0.01;
  const sum = raw.reduce((a, b) => a + b, 0);
  return raw.map((x) => x / sum);
}

describe('a prepared check', () => {
  it('tells as much as the plain formulas do, at any weight and with impossible outcomes', () => {
    const random = createRandom(5);
    for (let round = 0; round < 200; round += 1) {
      const causes = 2 + Math.floor(random() * 60);
      const values = 1 + Math.floor(random() * 4);
      const weight = [0, 0.3, 0.8, 1, 1.7][round % 5] as number;
      const check = { table: Float64Array.from(Array.from({ length: causes }, () => shares(random, values)).flat()), values, weight };
      const posterior = Float64Array.from(shares(random, causes));
      const ready = preparedCheck(check, causes);
      expect(Math.abs(preparedBits(posterior, ready) - expectedBits(posterior, check))).toBeLessThan(1e-12);
      const chance = predictive(posterior, check);
      for (let value = 0; value < values; value += 1) {
        const { probability, after } = preparedOutcome(posterior, ready, value);
        expect(probability).toBeCloseTo(chance[value] as number, 13);
        posteriorAfter(posterior, check, value).forEach((p, cause) => expect(after[cause]).toBeCloseTo(p, 13));
      }
    }
  });

  it('is made anew where the same table is believed otherwise, and refuses a table of the wrong shape', () => {
    const table = Float64Array.of(0.9, 0.1, 0.2, 0.8);
    const posterior = Float64Array.of(0.5, 0.5);
    for (const weight of [1, 0.5]) {
      const check = { table, values: 2, weight };
      expect(preparedBits(posterior, preparedCheck(check, 2))).toBeCloseTo(expectedBits(posterior, check), 12);
    }
    expect(() => preparedCheck({ table, values: 2, weight: 1 }, 3)).toThrow(RangeError);
  });
});
