import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const names = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome', 'chrome'];

/** Places off the search path, by system. @type {Partial<Record<NodeJS.Platform, string[]>>} */
const places = {
  linux: ['/usr/bin', '/usr/local/bin', '/snap/bin', '/opt/google/chrome'].flatMap((folder) =>
    names.map((name) => join(folder, name)),
  ),
  darwin: ['/Applications/Chromium.app/Contents/MacOS/Chromium', '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome'],
  win32: ['C:\\Program Files\\Chromium\\Application\\chrome.exe', 'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe'],
};

/**
 * Where Chromium is: what CHROMIUM_PATH names, else the search path, else the usual places.
 *
 * @param {{ env: Record<string, string | undefined>, platform: NodeJS.Platform, exists?: (path: string) => boolean }} system
 * @returns {string | null} null when there is none; a CHROMIUM_PATH that names nothing is none, too
 */
export function findChromium({ env, platform, exists = existsSync }) {
  if (env.CHROMIUM_PATH) return exists(env.CHROMIUM_PATH) ? env.CHROMIUM_PATH : null;
  const onPath = (env.PATH ?? '').split(delimiter).flatMap((folder) => names.map((name) => join(folder, name)));
  return [...onPath, ...(places[platform] ?? [])].find((path) => exists(path)) ?? null;
}

/**
 * One sentence on how to get it.
 * @param {{ env: Record<string, string | undefined>, platform: NodeJS.Platform }} system
 * @returns {string}
 */
export function chromiumSentence({ env, platform }) {
  if (env.CHROMIUM_PATH) return `CHROMIUM_PATH names ${env.CHROMIUM_PATH}, which does not exist: correct it or unset it`;
  const how =
    platform === 'linux'
      ? 'run "sudo apt-get install -y chromium" (Debian, Ubuntu) or "sudo dnf install -y chromium" (Fedora)'
      : 'install Chromium';
  return `Chromium was not found: ${how}, or set CHROMIUM_PATH to where it is`;
}
