import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/**
 * @typedef {object} System what decides how a compiler is found and installed
 * @property {NodeJS.Platform} platform
 * @property {string} distribution ID and ID_LIKE of /etc/os-release, or ''
 * @property {(name: string) => boolean} has whether a program is on the search path
 */

/** @returns {System} the system that this runs on */
export function thisSystem() {
  return { platform: process.platform, distribution: distribution(), has: onSearchPath };
}

function distribution() {
  try {
    const text = readFileSync('/etc/os-release', 'utf8');
    return [...text.matchAll(/^ID(?:_LIKE)?="?([^"\n]*)"?/gm)].map((match) => match[1]).join(' ');
  } catch {
    return '';
  }
}

/** @param {string} name */
function onSearchPath(name) {
  const endings = process.platform === 'win32' ? ['.exe', '.cmd', '.bat'] : [''];
  const folders = (process.env.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  return folders.some((folder) => endings.some((ending) => existsSync(join(folder, name + ending))));
}

/** Whether a program runs and reports success. @param {string} program @param {string[]} args */
function succeeds(program, args) {
  return spawnSync(program, args, { stdio: 'ignore' }).status === 0;
}

/**
 * What is missing to compile a native module, by the names people know.
 * @param {System} system
 * @param {(program: string, args: string[]) => boolean} [runs] whether a program runs and reports success
 * @returns {string[]} empty when everything is there
 */
export function missingBuildTools({ platform, has }, runs = succeeds) {
  // The commands exist on every Mac; until the tools are there, they only offer to install them.
  if (platform === 'darwin') return runs('xcode-select', ['-p']) ? [] : ['the command line tools'];
  if (platform === 'win32') {
    const studio = join(process.env['ProgramFiles(x86)'] ?? 'C:\\Program Files (x86)', 'Microsoft Visual Studio', 'Installer', 'vswhere.exe');
    const missing = has('python') || has('python3') || has('py') ? [] : ['Python 3'];
    return existsSync(studio) ? missing : [...missing, 'a C++ compiler'];
  }
  const missing = ['python3', 'make'].filter((name) => !has(name));
  return ['g++', 'c++', 'clang++'].some(has) ? missing : [...missing, 'a C++ compiler'];
}

/** The Debian packages that bring all of them. */
export const debianBuildPackages = ['python3', 'make', 'g++'];

/** @param {System} system */
export function isDebian({ platform, distribution: id }) {
  return platform === 'linux' && /\b(debian|ubuntu)\b/.test(id);
}

/**
 * One sentence: what is missing, and how this system gets it.
 * @param {System} system
 * @param {string[]} missing
 * @returns {string}
 */
export function buildToolsSentence(system, missing) {
  const names = new Intl.ListFormat('en').format(missing);
  return `SQLite's binding must be compiled on this machine, and ${names} ${missing.length === 1 ? 'is' : 'are'} missing: ${remedy(system)}, then try again.`;
}

/** @param {System} system */
function remedy(system) {
  if (isDebian(system)) return `run "sudo apt-get install -y ${debianBuildPackages.join(' ')}"`;
  if (/\b(fedora|rhel)\b/.test(system.distribution)) return 'run "sudo dnf install -y python3 make gcc-c++"';
  if (system.platform === 'darwin') return 'run "xcode-select --install"';
  if (system.platform === 'win32') {
    return 'install Python 3 from https://www.python.org, and the Visual Studio Build Tools with "Desktop development with C++"';
  }
  return "install Python 3, make and a C++ compiler with your system's package manager";
}
