import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { projectFolder } from './project-folder.mjs';

/**
 * What a small note beside a result says, or null when there is none.
 * @param {string} file absolute, or below the project folder
 * @returns {string | null}
 */
export function readStamp(file) {
  const path = resolve(projectFolder, file);
  return existsSync(path) ? readFileSync(path, 'utf8') : null;
}

/** @param {string} file @param {string} state */
export function writeStamp(file, state) {
  const path = resolve(projectFolder, file);
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, state);
}

/** @param {string} file */
export function removeStamp(file) {
  rmSync(resolve(projectFolder, file), { force: true });
}

/**
 * Does something once per state of what it depends on; the state it was done for is noted beside the result.
 * @param {string} file the note
 * @param {string} state
 * @param {() => Promise<void>} make
 * @returns {Promise<void>}
 */
export async function unlessDone(file, state, make) {
  if (readStamp(file) === state) return;
  removeStamp(file);
  await make();
  writeStamp(file, state);
}
