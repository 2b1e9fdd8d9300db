import { randomBytes } from 'node:crypto';
import { linkSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/**
 * The key that session cookies are signed with, from a file beside the database that only its owner can read. It is
 * made once, with a line that says so; whoever can read it could read the sessions in the database, too.
 *
 * @param databaseFile absolute path of the database.
 * @param say where the line goes.
 * @returns 43 characters, 256 bits.
 */
export function keptSecret(databaseFile: string, say: (line: string) => void): string {
  const file = join(dirname(databaseFile), 'session-secret');
  const kept = read(file);
  if (kept !== null) return kept;
  const draft = `${file}.${process.pid}`;
  writeFileSync(draft, randomBytes(32).toString('base64url'), { mode: 0o600 });
  try {
    // A link fails where the name exists: of two processes that start at once, one wins and both read the same.
    linkSync(draft, file);
    say(`Made the key that session cookies are signed with: ${file}. Without it everybody has to sign in again.`);
  } catch (error) {
    if (read(file) === null) throw error;
  } finally {
    rmSync(draft, { force: true });
  }
  return read(file) as string;
}

function read(file: string): string | null {
  try {
    const text = readFileSync(file, 'utf8').trim();
    if (text.length < 32) throw new Error(`The session key in ${file} is too short. Remove the file: a new one will be made.`);
    return text;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  }
}
