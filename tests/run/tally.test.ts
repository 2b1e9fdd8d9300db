import { describe, expect, it } from 'vitest';
import { countLine, exitCode, tallyOf } from './tally.mjs';

const file = (status: string, ...results: string[]) => ({
  name: 'a.test.ts',
  status,
  assertionResults: results.map((result, index) => ({ status: result, fullName: `test ${index}` })),
});

describe('tallyOf', () => {
  it('counts what passed and failed, and names what was skipped', () => {
    expect(tallyOf({ files: [file('failed', 'passed', 'failed', 'skipped', 'todo'), file('passed', 'passed')], code: 1 })).toEqual({
      passed: 2,
      failed: 1,
      skipped: ['test 2', 'test 3'],
    });
  });

  it('counts a file that could not be loaded as a failure', () => {
    expect(tallyOf({ files: [file('failed')], code: 1 }).failed).toBe(1);
  });

  it('counts a run that ended badly without a failed test as a failure', () => {
    expect(tallyOf({ files: [file('passed', 'passed')], code: 1 }).failed).toBe(1);
    expect(tallyOf({ files: null, code: 1 }).failed).toBe(1);
  });
});

describe('countLine', () => {
  it('is a plain count', () => {
    expect(countLine([{ passed: 2, failed: 0, skipped: [] }, { passed: 1, failed: 1, skipped: [] }])).toBe('3 passed, 1 failed');
  });

  it('names the skipped only when there are some', () => {
    expect(countLine([{ passed: 2, failed: 0, skipped: ['x'] }])).toBe('2 passed, 0 failed, 1 skipped');
  });
});

describe('exitCode', () => {
  it('tells passed, failed and incomplete apart', () => {
    expect(exitCode([{ passed: 1, failed: 0, skipped: [] }])).toBe(0);
    expect(exitCode([{ passed: 1, failed: 1, skipped: ['x'] }])).toBe(1);
    expect(exitCode([{ passed: 1, failed: 0, skipped: ['x'] }])).toBe(2);
  });
});
