import { afterEach, beforeEach, expect, vi } from 'vitest';

// A message on console.error is a fault that nobody looked at: it fails the test it appears in. A test that
// expects one takes it: see take-console-errors.ts.
let spy: ReturnType<typeof vi.spyOn>;

beforeEach(() => {
  spy = vi.spyOn(console, 'error').mockImplementation(() => {});
});

afterEach(() => {
  const calls = spy.mock.calls.map((args: unknown[]) => args.map(String).join(' '));
  spy.mockRestore();
  expect(calls, 'unexpected console.error').toEqual([]);
});
