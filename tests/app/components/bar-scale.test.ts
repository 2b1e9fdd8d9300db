import { describe, expect, it } from 'vitest';
import { barScale, lengthOf } from '../../../app/_components/bar-scale';

describe('barScale', () => {
  it.each([
    [[], 0.1],
    [[0.02, 0.1], 0.1],
    [[0.11], 0.25],
    [[0.3, 0.02], 0.5],
    [[0.51], 1],
    [[1], 1],
  ])('takes the smallest full width that holds all of %j: %d', (shares, full) => expect(barScale(shares)).toBe(full));
});

describe('lengthOf', () => {
  it('is the share of the full width, cut at both ends', () => {
    expect([0.05, 0, -0.2, 0.7].map((share) => lengthOf(share, 0.5))).toEqual(['10.00%', '0.00%', '0.00%', '100.00%']);
  });
});
