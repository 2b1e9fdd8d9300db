import { writeFileSync } from 'node:fs';

/**
 * Notes what a plain count hides: tests that passed only when tried again, and tests that are written to fail for as long
 * as something falls short. Writes { retried, shortfalls } (names of tests) and { told } (what tests put into `task.meta.told`) to the
 * file that TEST_NOTES names.
 */
export default class NotesReporter {
  /** @type {string[]} */
  retried = [];

  /** @type {string[]} */
  shortfalls = [];

  /** What tests have to say about how they were run. @type {string[]} */
  told = [];

  /** @param {import('vitest/node').TestCase} test */
  onTestCaseResult(test) {
    if (test.result().state !== 'passed') return;
    if (test.diagnostic()?.flaky) this.retried.push(test.fullName);
    if (test.options.fails) this.shortfalls.push(test.fullName);
    const { told } = /** @type {{ told?: string }} */ (test.meta());
    if (told !== undefined) this.told.push(told);
  }

  onTestRunEnd() {
    const file = process.env.TEST_NOTES;
    if (file) writeFileSync(file, JSON.stringify({ retried: this.retried, shortfalls: this.shortfalls, told: this.told }));
  }
}
