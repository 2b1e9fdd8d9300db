import { clientStamp, generateClient } from '../../prisma/generate.mjs';
import { buildFront } from './build-front.mjs';
import { buildPlanWorker } from './build-plan-worker.mjs';
import { buildServiceWorker } from './build-service-worker.mjs';
import { buildUpkeepProgram } from './build-upkeep-program.mjs';
import { databaseFile, requireWritable, requireWritableDatabase } from './data-folder.mjs';
import { fingerprint } from './fingerprint.mjs';
import { ensureInstalled } from './install.mjs';
import { projectFolder } from './project-folder.mjs';
import { Refusal } from './refusal.mjs';
import { lastLines, runScript } from './run-command.mjs';
import { unlessDone } from './stamp.mjs';
import { step } from './step.mjs';

/**
 * The database this process works on; from here on every program that is started gets it as an absolute address.
 * @returns {string} absolute path
 * @throws {Refusal} when the address is wrong or the place cannot be written to
 */
export function settleDatabase() {
  const file = databaseFile(process.env.DATABASE_URL, projectFolder);
  requireWritable(projectFolder, 'the program has to be installed and built there, so clone it to a place of your own');
  requireWritableDatabase(file);
  process.env.DATABASE_URL = `file:${file}`;
  return file;
}

/**
 * Installs what is missing and generates the Prisma client if the schema changed.
 * @returns {Promise<void>}
 * @throws {Refusal}
 */
export async function preparePackages() {
  await ensureInstalled();
  await unlessDone(clientStamp, fingerprint(['prisma/schema.prisma', 'package-lock.json']), () =>
    step('Generating the database client', async () => {
      const { ok, output } = generateClient();
      if (!ok) throw new Refusal(`${lastLines(output)}\n\nPrisma could not generate its client from prisma/schema.prisma.`);
    }),
  );
}

/**
 * Builds the pages if anything that they are made from changed.
 * @returns {Promise<void>}
 * @throws {Refusal}
 */
export async function preparePages() {
  const sources = ['app', 'server', 'shared', 'public', 'prisma/schema.prisma', 'next.config.ts', 'proxy.ts', 'tsconfig.json', 'package-lock.json'];
  await unlessDone('.next/made-from', fingerprint(sources, [process.version]), () =>
    step('Building the pages', async () => {
      const { code, output } = await runScript('node_modules/next/dist/bin/next', ['build']);
      if (code !== 0) throw new Refusal(`${lastLines(output, 40)}\n\nThe pages could not be built.`);
      await buildServiceWorker();
      await buildPlanWorker();
      await buildUpkeepProgram();
      await buildFront();
    }),
  );
}
