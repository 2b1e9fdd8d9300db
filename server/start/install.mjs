import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectFolder } from './project-folder.mjs';
import { Refusal } from './refusal.mjs';
import { lastLines, runNpm } from './run-command.mjs';
import { bindingLoads, buildBinding, requireBuildTools } from './sqlite-binding.mjs';
import { step } from './step.mjs';

/**
 * @typedef {{ version?: string, optional?: boolean }} LockedPackage
 * @typedef {{ packages: Record<string, LockedPackage> }} Lock
 */

/** @param {string} path @returns {Lock | null} */
function readLock(path) {
  try {
    return JSON.parse(readFileSync(join(projectFolder, path), 'utf8'));
  } catch {
    return null;
  }
}

/**
 * Whether what is installed is what the lock file asks for. npm notes what it installed in a lock file of its own,
 * inside node_modules. Optional packages (those for other systems) may be absent.
 *
 * @param {Lock | null} wanted package-lock.json
 * @param {Lock | null} found node_modules/.package-lock.json
 * @returns {boolean}
 */
export function sameInstall(wanted, found) {
  if (!wanted || !found) return false;
  return Object.entries(wanted.packages).every(([path, { version, optional }]) => {
    if (path === '') return true;
    const installed = found.packages[path];
    return installed ? installed.version === version : optional === true;
  });
}

/**
 * Installs the packages of the lock file and SQLite's binding, unless they are there.
 *
 * Install scripts are switched off and the one that is needed is run by name: the others only fetch programs
 * that this project does without.
 *
 * @returns {Promise<void>}
 * @throws {Refusal}
 */
export async function ensureInstalled() {
  const complete = sameInstall(readLock('package-lock.json'), readLock('node_modules/.package-lock.json'));
  if (complete && (await bindingLoads())) return;
  await requireBuildTools();
  if (!complete) {
    await step('Installing the packages of package-lock.json', async () => {
      const { code, output } = await runNpm(['ci', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error']);
      if (code !== 0) throw new Refusal(`${lastLines(output)}\n\nnpm could not install the packages: the lines above say why.`);
    });
  }
  if (await bindingLoads()) return;
  await step("Getting SQLite's binding: compiled beforehand, or compiled now, which takes a minute or two", buildBinding);
}
