import { vi } from 'vitest';

/**
 * What the running test has sent to console.error so far; taking it makes it expected. For tests of code that reports
 * a fault: anything that is not taken fails the test.
 */
export function takeConsoleErrors(): string[] {
  const { mock } = vi.mocked(console.error);
  const messages = mock.calls.map((args: unknown[]) => args.map(String).join(' '));
  vi.mocked(console.error).mockClear();
  return messages;
}
