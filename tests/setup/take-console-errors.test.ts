import { describe, expect, it } from 'vitest';
import { takeConsoleErrors } from './take-console-errors';

describe('takeConsoleErrors', () => {
  it('gives what was reported since the last time, and lets the test pass', () => {
    console.error('a', 1);
    console.error(new Error('b'));
    expect(takeConsoleErrors()).toEqual(['a 1', 'Error: b']);
    expect(takeConsoleErrors()).toEqual([]);
  });
});
