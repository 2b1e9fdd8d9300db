/** What the log says of an error. */
export type LoggedError = { type: string; code: string | null; message: string | null; at: string[]; cause: LoggedError | null };

/** Errors whose messages quote what they were given: a text that somebody typed could stand in them. */
const QUOTING = /^(Prisma|SyntaxError$|SqliteError$|ZodError$)/;
const DEEPEST = 4;

/**
 * An error as it may be logged: its class, its code, the places in the code it came through, and its message unless errors
 * of this class quote their input. Causes follow, four deep.
 */
export function loggedError(error: unknown, depth = 0): LoggedError {
  if (!(error instanceof Error)) return { type: typeof error, code: null, message: null, at: [], cause: null };
  const type = error.name === 'Error' ? error.constructor.name : error.name;
  const code = 'code' in error && typeof error.code === 'string' ? error.code : null;
  return {
    type,
    code,
    message: QUOTING.test(type) ? null : error.message,
    at: placesIn(error.stack ?? ''),
    cause: error.cause === undefined || depth >= DEEPEST ? null : loggedError(error.cause, depth + 1),
  };
}

/** The lines of a stack that name places; its head repeats the message. */
function placesIn(stack: string): string[] {
  return stack
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line.startsWith('at '));
}
