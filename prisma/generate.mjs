// Generates the Prisma client without network: `node prisma/generate.mjs`.
//
// `prisma generate` does not use the native schema engine, but the command line fetches it first unless
// it is told where one is. Naming any existing executable skips the download; it is never run.
import { spawnSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Beside the client: what it was made from, noted by whoever wants to know later. Every new client is without it. */
export const clientStamp = 'prisma/generated/.made-from';

/**
 * Writes prisma/generated from prisma/schema.prisma.
 * Returns { ok, output }: `output` is what the generator printed, to be shown when it failed.
 */
export function generateClient() {
  rmSync(join(root, clientStamp), { force: true });
  const run = spawnSync(process.execPath, ['node_modules/prisma/build/index.js', 'generate', '--no-hints'], {
    cwd: root,
    encoding: 'utf8',
    env: {
      ...process.env,
      PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
      PRISMA_HIDE_UPDATE_MESSAGE: '1',
      CHECKPOINT_DISABLE: '1',
    },
  });
  return { ok: run.status === 0, output: `${run.stdout ?? ''}${run.stderr ?? ''}`.trim() };
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const { ok, output } = generateClient();
  console.log(output);
  process.exit(ok ? 0 : 1);
}
