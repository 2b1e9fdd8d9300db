import { projectFolder } from './project-folder.mjs';

/**
 * Bundles the program for upkeep beside the built pages (`server/aside/upkeep-aside.ts` starts it there). Packages stay outside: it
 * must stand where Node finds them.
 *
 * @param {string} [outfile] below the project folder
 * @returns {Promise<void>}
 */
export async function buildUpkeepProgram(outfile = '.next/upkeep-program.mjs') {
  // Not there yet when a bare clone starts: packages are installed before this is called.
  const { build } = await import('esbuild');
  await build({
    absWorkingDir: projectFolder,
    entryPoints: ['server/aside/upkeep-program.ts'],
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
