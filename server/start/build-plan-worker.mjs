import { projectFolder } from './project-folder.mjs';

/**
 * Bundles the thread that searches for repair plans beside the built pages (`server/aside/find-plan-aside.ts` starts it there).
 *
 * @param {string} [outfile] below the project folder, or absolute
 * @returns {Promise<void>}
 */
export async function buildPlanWorker(outfile = '.next/plan-worker.mjs') {
  // Not there yet when a bare clone starts: packages are installed before this is called.
  const { build } = await import('esbuild');
  await build({
    absWorkingDir: projectFolder,
    entryPoints: ['server/aside/plan-worker.ts'],
    outfile,
    bundle: true,
    minify: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    logLevel: 'error',
  });
}
