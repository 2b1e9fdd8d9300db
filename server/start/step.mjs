/** How often a step that takes long says that it is still at work, in milliseconds. */
const interval = 10_000;

/**
 * Runs one step of a start, saying what it is when it begins, that it goes on, and how long it took.
 *
 * @template T
 * @param {string} what as in "Building the pages"
 * @param {(note: (text: string) => void) => Promise<T>} run `note` adds a line of progress
 * @returns {Promise<T>}
 */
export async function step(what, run) {
  const started = performance.now();
  const elapsed = () => `${((performance.now() - started) / 1000).toFixed(0)} s`;
  console.log(`${what} ...`);
  const ticking = setInterval(() => console.log(`  still at it, ${elapsed()}`), interval);
  try {
    const result = await run((text) => console.log(`  ${text}`));
    console.log(`  done in ${((performance.now() - started) / 1000).toFixed(1)} s`);
    return result;
  } finally {
    clearInterval(ticking);
  }
}
