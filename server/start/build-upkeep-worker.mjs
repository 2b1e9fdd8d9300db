import { projectFolder } from './project-folder.mjs';

/**
 * Bundles the thread for upkeep beside the built pages (`server/aside/upkeep-aside.ts` starts it there). Packages stay outside: it
 * must stand where Node finds them.
 *
 * @param {string} [outfile] below the project folder
 * @returns {Promise<void>}
 */
export async function buildUpkeepWorker(outfile = '.next/upkeep-worker.mjs') {
  // Not there yet when a bare clone starts: packages are installed before this is called.
  const { build } = await import('esbuild');
  await build({
    absWorkingDir: projectFolder,
    entryPoints: ['server/aside/upkeep-worker.ts'],
    outfile,
    bundle: true,
    minify: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
    target: 'node20',
    logLevel: 'error',
  });
}
