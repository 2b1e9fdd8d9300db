import { lastLines, runCommand } from './run-command.mjs';
import { isDebian, thisSystem } from './build-tools.mjs';

/** Whether packages can be installed without asking: a Debian kind of system, as root. */
export function canInstallPackages() {
  return isDebian(thisSystem()) && process.getuid?.() === 0;
}

/**
 * Installs Debian packages, after refreshing the list of them.
 * @param {string[]} packages
 * @returns {Promise<string | null>} null when done, else the end of what apt-get said
 */
export async function installDebianPackages(packages) {
  const env = { DEBIAN_FRONTEND: 'noninteractive' };
  await runCommand('apt-get', ['update', '-qq'], { env });
  const { code, output } = await runCommand('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...packages], { env });
  return code === 0 ? null : lastLines(output, 8);
}
