import { describe, expect, it } from 'vitest';
import { waterfallScale } from '../../../app/_components/waterfall-step';

describe('waterfallScale', () => {
  it('holds the start, every running sum and nought', () => {
    // -4 -> +6 -> -9: the sums reach from -9 to 6.
    const { low, high } = waterfallScale(-4, [10, -15]);
    expect(low).toBeLessThan(-9);
    expect(high).toBeGreaterThan(6);
  });

  it('has width even where nothing weighs anything', () => {
    const { low, high } = waterfallScale(0, []);
    expect(high - low).toBeGreaterThan(0);
  });
});
