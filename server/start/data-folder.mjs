import { accessSync, constants, existsSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { Refusal } from './refusal.mjs';

/**
 * The database file that DATABASE_URL names. server/env.ts reads the same address by the same rules; this copy
 * exists because it has to work before anything is installed.
 *
 * @param {string | undefined} address `file:<path>`; unset or empty means the project's data folder
 * @param {string} folder absolute folder that a relative path starts from
 * @returns {string} absolute path
 * @throws {Refusal} for any other kind of address
 */
export function databaseFile(address, folder) {
  const wanted = address || 'file:./data/second-bench.db';
  if (!/^file:[^?]+$/.test(wanted)) {
    throw new Refusal('DATABASE_URL must be the address of a SQLite file, such as file:./data/second-bench.db.');
  }
  return resolve(folder, wanted.slice('file:'.length).replace(/^\/\/(?=\/)/, ''));
}

/**
 * @param {string} folder made when it does not exist
 * @param {string} remedy what to do instead, as the end of a sentence
 * @returns {void}
 * @throws {Refusal} when nothing can be written there
 */
export function requireWritable(folder, remedy) {
  const probe = join(folder, `.write-test-${process.pid}`);
  try {
    mkdirSync(folder, { recursive: true });
    writeFileSync(probe, '');
    rmSync(probe);
  } catch (error) {
    const code = /** @type {NodeJS.ErrnoException} */ (error).code ?? 'unknown reason';
    throw new Refusal(`The folder ${folder} cannot be written to (${code}): ${remedy}.`);
  }
}

/**
 * Checks that the database can live where it is meant to.
 * @param {string} file
 * @returns {void}
 * @throws {Refusal}
 */
export function requireWritableDatabase(file) {
  const remedy = 'make it writable, or name another place, as in DATABASE_URL=file:/home/me/second-bench.db';
  requireWritable(dirname(file), remedy);
  if (!existsSync(file)) return;
  try {
    accessSync(file, constants.W_OK);
  } catch {
    throw new Refusal(`The database ${file} cannot be written to: ${remedy}.`);
  }
}
