/** Something the user can put right: the message alone is printed, without a call trace. */
export class Refusal extends Error {}

/**
 * Runs a script's main function; a refusal is printed as its sentence and ends the process with exit code 1.
 * @param {() => Promise<number | void>} main its number becomes the exit code
 * @returns {Promise<void>}
 */
export async function runMain(main) {
  try {
    process.exitCode = (await main()) ?? 0;
  } catch (error) {
    console.error(error instanceof Refusal ? `\n${error.message}` : error);
    process.exit(1);
  }
}
