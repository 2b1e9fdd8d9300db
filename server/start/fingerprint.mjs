import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { projectFolder } from './project-folder.mjs';

/** What the program writes itself. */
const written = new Set(['node_modules', '.next', 'generated', 'output', 'service-worker.js']);

/**
 * Every file below a path, sorted; a missing path has none.
 * @param {string} path below the project folder
 * @returns {string[]}
 */
function filesBelow(path) {
  const stat = statSync(join(projectFolder, path), { throwIfNoEntry: false });
  if (!stat) return [];
  if (stat.isFile()) return [path];
  return readdirSync(join(projectFolder, path))
    .filter((name) => !written.has(name))
    .sort()
    .flatMap((name) => filesBelow(`${path}/${name}`));
}

/**
 * A hash over names and contents of files, to tell whether something has to be made again.
 * @param {string[]} paths files and folders below the project folder
 * @param {string[]} [extra] whatever else the result depends on
 * @returns {string} 64 hexadecimal digits
 */
export function fingerprint(paths, extra = []) {
  const hash = createHash('sha256');
  for (const text of extra) hash.update(`${text}\0`);
  for (const file of paths.flatMap(filesBelow)) {
    hash.update(`${file}\0`).update(readFileSync(join(projectFolder, file))).update('\0');
  }
  return hash.digest('hex');
}
