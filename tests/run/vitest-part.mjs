import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { projectFolder } from '../../server/start/project-folder.mjs';
import { runScript } from '../../server/start/run-command.mjs';
import { tallyOf } from './tally.mjs';

/** @typedef {{ retried: string[], shortfalls: string[], told: string[] }} Notes names of tests that the count says too little about, and what tests have to say */

/**
 * Runs one of the projects of vitest.config.ts; what vitest says is printed as it comes.
 * @param {string} project
 * @returns {Promise<import('./tally.mjs').Tally & Notes>}
 */
export async function runProject(project) {
  const report = `tests/output/${project}.json`;
  mkdirSync(join(projectFolder, 'tests/output'), { recursive: true });
  const notes = `tests/output/${project}-notes.json`;
  for (const old of [report, notes]) rmSync(join(projectFolder, old), { force: true });
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`, '--reporter=./tests/run/notes-reporter.mjs'];
  const { code } = await runScript('node_modules/vitest/vitest.mjs', ['run', '--project', project, ...reporters], {
    env: { NO_COLOR: '1', TEST_NOTES: join(projectFolder, notes) },
    onLine: (line) => console.log(line),
  });
  const { retried, shortfalls, told } = readJson(notes) ?? { retried: [], shortfalls: [], told: [] };
  return { ...tallyOf({ files: readJson(report)?.testResults ?? null, code }), retried, shortfalls, told };
}

/** @param {string} file @returns {any} null when there is none, or not a whole one */
function readJson(file) {
  try {
    return JSON.parse(readFileSync(join(projectFolder, file), 'utf8'));
  } catch {
    return null;
  }
}
