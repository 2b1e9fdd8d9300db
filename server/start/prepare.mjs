import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { generateClient } from '../../prisma/generate.mjs';
import { databaseFile, requireWritable, requireWritableDatabase } from './data-folder.mjs';
import { fingerprint } from './fingerprint.mjs';
import { ensureInstalled } from './install.mjs';
import { projectFolder } from './project-folder.mjs';
import { Refusal } from './refusal.mjs';
import { lastLines, runScript, runTypeScript } from './run-command.mjs';
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
  await unlessDone('prisma/generated/.made-from', fingerprint(['prisma/schema.prisma', 'package-lock.json']), () =>
    step('Generating the database client', async () => {
      const { ok, output } = generateClient();
      if (!ok) throw new Refusal(`${lastLines(output)}\n\nPrisma could not generate its client from prisma/schema.prisma.`);
    }),
  );
}

/**
 * Brings the database up to date and puts the vocabulary, or the demo world, into an empty one.
 * @param {{ demo: boolean }} content
 * @returns {Promise<void>}
 * @throws {Refusal}
 */
export async function prepareDatabase({ demo }) {
  const state = await runTypeScript('server/start/database-state.ts', []);
  if (state.code !== 0) throw new Refusal(lastLines(state.output));
  /** @type {{ applied: string[], cases: number, vocabulary: number }} */
  const { applied, cases, vocabulary } = JSON.parse(lastLines(state.output, 1));
  if (applied.length > 0) console.log(`Migrated the database: ${applied.join(', ')}.`);
  const vocabularyFile = `${databaseFile(process.env.DATABASE_URL, projectFolder)}.vocabulary`;
  const current = vocabulary > 0 && readStamp(vocabularyFile) === vocabularyVersion();
  if (demo && cases === 0) await seed('Seeding the demo world', ['--demo']);
  else if (!current) await seed('Bringing the vocabulary up to date', []);
  else return;
  writeFileSync(vocabularyFile, vocabularyVersion());
}

/** What the vocabulary in a database was made from. */
function vocabularyVersion() {
  return fingerprint(['seed', 'shared/schemas']);
}

/** @param {string} what @param {string[]} args */
async function seed(what, args) {
  await step(what, async (note) => {
    const { code, output } = await runTypeScript('seed/run.ts', args, { onLine: note });
    if (code !== 0) throw new Refusal(`${lastLines(output)}\n\nThe database could not be filled: the lines above say why.`);
  });
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
    }),
  );
}

/**
 * Does something once per state of what it depends on; the state it was done for is noted beside the result.
 * @param {string} stampFile below the project folder
 * @param {string} state
 * @param {() => Promise<void>} make
 */
async function unlessDone(stampFile, state, make) {
  const path = join(projectFolder, stampFile);
  if (readStamp(path) === state) return;
  await make();
  mkdirSync(join(path, '..'), { recursive: true });
  writeFileSync(path, state);
}

/** @param {string} path */
function readStamp(path) {
  return existsSync(path) ? readFileSync(path, 'utf8') : null;
}
