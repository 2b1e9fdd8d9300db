import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectFolder } from './project-folder.mjs';

/** Where the built pages keep their scripts, styles and faces. */
const BUILT = '.next/static';
/** What a page can ask for; the older form of the faces is for browsers that have no service workers. */
const WANTED = /\.(js|css|woff2)$/;

/**
 * Bundles the service worker with the list of the files of the built pages, so that what is on a device is always one
 * build, whole. The result is served from the root: its scope is the site.
 *
 * @returns {Promise<void>}
 */
export async function buildServiceWorker() {
  // Not there yet when a bare clone starts: packages are installed before this is called.
  const { build } = await import('esbuild');
  const files = filesBelow(join(projectFolder, BUILT)).filter((file) => WANTED.test(file));
  const entries = files.map((file) => ({ url: `/_next/static/${file}`, revision: hashOf(readFileSync(join(projectFolder, BUILT, file))) }));
  await build({
    absWorkingDir: projectFolder,
    entryPoints: ['app/_offline/service-worker.ts'],
    outfile: 'public/service-worker.js',
    bundle: true,
    minify: true,
    format: 'iife',
    target: 'es2022',
    define: {
      STATIC_FILES: JSON.stringify(entries),
      BUILD: JSON.stringify(hashOf(JSON.stringify(entries))),
      'process.env.NODE_ENV': '"production"',
    },
    logLevel: 'error',
  });
}

/** @param {string} folder @returns {string[]} files below it, as addresses relative to it */
function filesBelow(folder) {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1).replaceAll('\\', '/'))
    .sort();
}

/** @param {string | Buffer} content */
function hashOf(content) {
  return createHash('sha256').update(content).digest('hex').slice(0, 16);
}
