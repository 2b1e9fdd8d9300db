import { copyFileSync, existsSync, mkdirSync, mkdtempSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fingerprint } from '../../../server/start/fingerprint.mjs';
import { projectFolder } from '../../../server/start/project-folder.mjs';
import { lastLines, runTypeScript } from '../../../server/start/run-command.mjs';

const kept = join(projectFolder, 'tests/output');

/** Runs one of the project's scripts on a database; what it says is shown when it fails. */
async function run(file: string, args: string[], database: string): Promise<void> {
  const { code, output } = await runTypeScript(file, args, { env: { DATABASE_URL: `file:${database}` } });
  if (code !== 0) throw new Error(`${file} failed on the test database:\n${lastLines(output)}`);
}

/** The seeded database, made once per state of the sources that it depends on. */
async function seeded(): Promise<string> {
  const state = fingerprint(['seed', 'shared', 'server', 'prisma', 'package-lock.json']).slice(0, 16);
  const file = join(kept, `demo-${state}.db`);
  if (existsSync(file)) return file;
  mkdirSync(kept, { recursive: true });
  for (const old of readdirSync(kept).filter((name) => name.startsWith('demo-'))) rmSync(join(kept, old));
  const making = join(kept, `demo-making-${process.pid}.db`);
  await run('server/start/database-state.ts', [], making);
  await run('seed/run.ts', ['--demo'], making);
  // A connection that closes last puts the write-ahead log into the file: this one is whole.
  renameSync(making, file);
  // The counted casebook that belongs to the name before.
  rmSync(`${making}.casebook`, { force: true });
  return file;
}

/**
 * A database with the demo world in it, for whoever asks: a copy in a folder of its own.
 * @returns its path, and what removes it.
 */
export async function demoDatabase(): Promise<{ file: string; remove: () => void }> {
  const folder = mkdtempSync(join(tmpdir(), 'second-bench-browser-'));
  const file = join(folder, 'demo.db');
  copyFileSync(await seeded(), file);
  return { file, remove: () => rmSync(folder, { recursive: true, force: true }) };
}
