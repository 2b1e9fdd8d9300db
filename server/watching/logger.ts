import pino from 'pino';
import { getEnv } from '../env';
import { loggedError } from './logged-error';

/** pino's number of the level from which a line is an error. */
const ERROR_LEVEL = 50;

/**
 * Where log lines go: standard error, one JSON object a line. Tests see errors alone, on the console, where an
 * unexpected one fails the test.
 */
const destination = {
  write(line: string): void {
    if (getEnv().mode !== 'test') process.stderr.write(line);
    else if ((JSON.parse(line) as { level: number }).level >= ERROR_LEVEL) console.error(line.trimEnd());
  },
};

let current: pino.Logger | null = null;

/**
 * The process's structured log, made when first used: the settings are read no earlier. Lines name procedures, counts and
 * times; never an account, an address, an input or anything typed (see `loggedError`).
 */
export function getLogger(): pino.Logger {
  current ??= pino(
    {
      level: getEnv().logLevel,
      // Neither the machine's name nor the process: the lines of one server need none.
      base: null,
      timestamp: pino.stdTimeFunctions.isoTime,
      serializers: { err: loggedError },
    },
    destination,
  );
  return current;
}
