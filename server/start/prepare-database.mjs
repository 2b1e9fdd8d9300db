import { databaseFile } from './data-folder.mjs';
import { fingerprint } from './fingerprint.mjs';
import { projectFolder } from './project-folder.mjs';
import { Refusal } from './refusal.mjs';
import { lastLines, runTypeScript } from './run-command.mjs';
import { readStamp, removeStamp, unlessDone, writeStamp } from './stamp.mjs';
import { step } from './step.mjs';

/**
 * Brings the database that DATABASE_URL names up to date: migrates it, puts the demo world into one without cases if
 * that is wanted, and otherwise the vocabulary, when it is missing or the project has a newer one.
 *
 * @param {{ demo: boolean }} content
 * @returns {Promise<void>}
 * @throws {Refusal}
 */
export async function prepareDatabase({ demo }) {
  const { applied, cases, vocabulary } = await migratedState();
  if (applied.length > 0) console.log(`Migrated the database: ${applied.join(', ')}.`);
  const file = databaseFile(process.env.DATABASE_URL, projectFolder);
  // Noted beside the database: what its vocabulary was made from, and that the demo world is only half in it.
  const stamp = `${file}.vocabulary`;
  const halfDone = `${file}.seeding`;
  if (vocabulary === 0) removeStamp(stamp);
  if (demo && (cases === 0 || readStamp(halfDone) !== null)) {
    writeStamp(halfDone, '');
    await seed('Seeding the demo world', ['--demo']);
    writeStamp(stamp, vocabularyVersion());
    removeStamp(halfDone);
    return;
  }
  await unlessDone(stamp, vocabularyVersion(), () => seed('Bringing the vocabulary up to date', []));
}

/** @returns {Promise<{ applied: string[], cases: number, vocabulary: number }>} after migrating */
async function migratedState() {
  const { code, output } = await runTypeScript('server/start/database-state.ts', []);
  if (code !== 0) throw new Refusal(lastLines(output));
  return JSON.parse(lastLines(output, 1));
}

function vocabularyVersion() {
  return fingerprint(['seed', 'shared/schemas']);
}

/** @param {string} what @param {string[]} args */
async function seed(what, args) {
  await step(what, async (note) => {
    const { code } = await runTypeScript('seed/run.ts', args, { onLine: note });
    if (code !== 0) throw new Refusal('The database could not be filled: the lines above say why.');
  });
}
