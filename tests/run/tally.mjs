/**
 * @typedef {object} Tally what a part of the tests came to
 * @property {number} passed
 * @property {number} failed
 * @property {string[]} skipped what was not run, each with its reason if there is one
 */

/**
 * @typedef {object} TestFile one file in a report of vitest
 * @property {string} name path of the file
 * @property {string} status
 * @property {{ status: string, fullName: string }[]} assertionResults
 */

/**
 * Counts a report of vitest. A file that could not be loaded is one failure, and so is a run that ended badly although
 * no test of it failed (an error outside any test, or no test found).
 *
 * @param {{ files: TestFile[] | null, code: number }} run files: the report's testResults, null when none was written
 * @returns {Tally}
 */
export function tallyOf({ files, code }) {
  const tally = { passed: 0, failed: 0, skipped: /** @type {string[]} */ ([]) };
  for (const file of files ?? []) {
    for (const { status, fullName } of file.assertionResults) {
      if (status === 'passed') tally.passed += 1;
      else if (status === 'failed') tally.failed += 1;
      else tally.skipped.push(fullName.trim());
    }
    if (file.status === 'failed' && !file.assertionResults.some(({ status }) => status === 'failed')) tally.failed += 1;
  }
  if (code !== 0 && tally.failed === 0) tally.failed = 1;
  return tally;
}

/**
 * The last line of a run.
 * @param {Tally[]} tallies
 * @returns {string} as in "12 passed, 0 failed" or "12 passed, 0 failed, 1 skipped"
 */
export function countLine(tallies) {
  const sum = (/** @type {(tally: Tally) => number} */ of) => tallies.reduce((total, tally) => total + of(tally), 0);
  const skipped = sum((tally) => tally.skipped.length);
  return `${sum((tally) => tally.passed)} passed, ${sum((tally) => tally.failed)} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;
}

/**
 * What the process ends with: 0 when everything passed, 1 when something failed, 2 when nothing failed but something was skipped.
 * @param {Tally[]} tallies
 * @returns {number}
 */
export function exitCode(tallies) {
  if (tallies.some((tally) => tally.failed > 0)) return 1;
  return tallies.some((tally) => tally.skipped.length > 0) ? 2 : 0;
}
