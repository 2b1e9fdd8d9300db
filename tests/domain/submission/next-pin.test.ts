import { describe, expect, it } from 'vitest';
import { nextPin } from '../../../shared/domain/submission/next-pin';

describe('nextPin', () => {
  it.each([
    ['9', '10'],
    ['A9', 'A10'],
    [' 1 ', '2'],
    ['OUT', ''],
    ['', ''],
  ])('after %s is %s', (pin, next) => expect(nextPin(pin)).toBe(next));
});
