import { projectFolder } from './project-folder.mjs';

/** Where the bundled server stands, below the project folder. */
export const frontFile = '.next/serve.mjs';

/**
 * Bundles the server that stands before the built pages (`server/front`).
 *
 * @returns {Promise<void>}
 */
export async function buildFront() {
  // Not there yet when a bare clone starts: packages are installed before this is called.
  const { build } = await import('esbuild');
  await build({
    absWorkingDir: projectFolder,
    entryPoints: ['server/front/serve.ts'],
    outfile: frontFile,
    bundle: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
    target: 'node20',
    logLevel: 'error',
  });
}
