import { existsSync, readFileSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { buildToolsSentence, debianBuildPackages, missingBuildTools, thisSystem } from './build-tools.mjs';
import { canInstallPackages, installDebianPackages } from './debian-packages.mjs';
import { projectFolder } from './project-folder.mjs';
import { Refusal } from './refusal.mjs';
import { lastLines, runCommand, runNpm } from './run-command.mjs';
import { step } from './step.mjs';

/**
 * Whether SQLite's native binding is there and fits this Node. Another process tries, because a binding that does
 * not fit may end the one that loads it.
 * @returns {Promise<boolean>}
 */
export async function bindingLoads() {
  if (!existsSync(join(projectFolder, 'node_modules/better-sqlite3/build/Release/better_sqlite3.node'))) return false;
  const attempt = "import('better-sqlite3').then(({ default: Database }) => new Database(':memory:').close())";
  return (await runCommand(process.execPath, ['--input-type=module', '-e', attempt])).code === 0;
}

/** The version in the lock file, known before anything is installed. */
function lockedVersion() {
  const lock = JSON.parse(readFileSync(join(projectFolder, 'package-lock.json'), 'utf8'));
  return lock.packages['node_modules/better-sqlite3'].version;
}

/**
 * Whether the binding's authors offer it compiled for this system, and their server answers.
 * @returns {Promise<boolean>}
 */
async function prebuiltReachable() {
  const libc = process.platform === 'linux' && !hasGlibc() ? 'linuxmusl' : process.platform;
  const version = lockedVersion();
  const file = `better-sqlite3-v${version}-node-v${process.versions.modules}-${libc}-${process.arch}.tar.gz`;
  const address = `https://github.com/WiseLibs/better-sqlite3/releases/download/v${version}/${file}`;
  try {
    return (await fetch(address, { method: 'HEAD', signal: AbortSignal.timeout(8000) })).ok;
  } catch {
    return false;
  }
}

function hasGlibc() {
  const report = /** @type {{ header?: { glibcVersionRuntime?: string } }} */ (process.report.getReport());
  return report.header?.glibcVersionRuntime !== undefined;
}

/**
 * Makes sure, before anything is installed, that the binding can be had: compiled beforehand, or by tools that are
 * here. On a Debian kind of system, as root, missing tools are installed.
 * @returns {Promise<void>}
 * @throws {Refusal} naming what is missing and how to get it
 */
export async function requireBuildTools() {
  const missing = missingBuildTools(thisSystem());
  if (missing.length === 0 || (await prebuiltReachable())) return;
  const sentence = buildToolsSentence(thisSystem(), missing);
  if (!canInstallPackages()) throw new Refusal(sentence);
  await step(`Installing ${debianBuildPackages.join(', ')} (apt-get), which compile SQLite's binding`, async () => {
    const fault = await installDebianPackages(debianBuildPackages);
    if (fault !== null) throw new Refusal(`${fault}\n\n${sentence}`);
  });
}

/**
 * Downloads the binding compiled, or compiles it.
 * @returns {Promise<void>}
 * @throws {Refusal}
 */
export async function buildBinding() {
  rmSync(join(projectFolder, 'node_modules/better-sqlite3/build'), { recursive: true, force: true });
  const headers = nodeHeaders();
  if (headers !== null) process.env.npm_config_nodedir = headers;
  const { code, output } = await runNpm(['rebuild', 'better-sqlite3', '--ignore-scripts=false']);
  if (code === 0 && (await bindingLoads())) return;
  throw new Refusal(`${lastLines(output)}\n\nSQLite's binding could not be made: the lines above say why. It needs Python 3, make, a C++ compiler and the network, for Node's header files.`);
}

/**
 * The folder with Node's own header files, when this Node came with them; compiling then needs no download.
 * @returns {string | null}
 */
function nodeHeaders() {
  const folder = dirname(dirname(process.execPath));
  try {
    const text = readFileSync(join(folder, 'include/node/node_version.h'), 'utf8');
    const part = (/** @type {string} */ name) => text.match(new RegExp(`#define NODE_${name}_VERSION (\\d+)`))?.[1];
    return `${part('MAJOR')}.${part('MINOR')}.${part('PATCH')}` === process.versions.node ? folder : null;
  } catch {
    return null;
  }
}
