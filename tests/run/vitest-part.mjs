import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { projectFolder } from '../../server/start/project-folder.mjs';
import { runScript } from '../../server/start/run-command.mjs';
import { tallyOf } from './tally.mjs';

/**
 * Runs one of the projects of vitest.config.ts; what vitest says is printed as it comes.
 * @param {string} project
 * @returns {Promise<import('./tally.mjs').Tally>}
 */
export async function runProject(project) {
  const report = `tests/output/${project}.json`;
  mkdirSync(join(projectFolder, 'tests/output'), { recursive: true });
  rmSync(join(projectFolder, report), { force: true });
  const args = ['run', '--project', project, '--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  const { code } = await runScript('node_modules/vitest/vitest.mjs', args, { env: { NO_COLOR: '1' }, onLine: (line) => console.log(line) });
  return tallyOf({ files: readReport(report), code });
}

/** @param {string} report */
function readReport(report) {
  try {
    return JSON.parse(readFileSync(join(projectFolder, report), 'utf8')).testResults;
  } catch {
    return null;
  }
}
