import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { freePort } from '../../../server/start/port.mjs';
import { serverArguments } from '../../../server/start/serve.mjs';
import { projectFolder } from '../../../server/start/project-folder.mjs';
import { quietEnvironment } from '../../../server/start/run-command.mjs';

/** A running server. */
export interface RunningServer {
  /** Without a slash at its end. */
  url: string;
  stop: () => Promise<void>;
}

/**
 * Starts the built pages on a free port.
 *
 * @param databaseFile the database it serves.
 * @param folder of an application that the framework serves by itself; without it, this project's pages are served as in production.
 * @returns once it answers.
 * @throws with what the server printed, when it stops or takes more than a minute.
 */
export async function startServer(databaseFile: string, folder: string = projectFolder): Promise<RunningServer> {
  const port = await freePort();
  const bare = [join(projectFolder, 'node_modules/next/dist/bin/next'), 'start', '-p', String(port), '-H', '127.0.0.1'];
  const child = spawn(process.execPath, folder === projectFolder ? serverArguments('start', { port, host: '127.0.0.1' }) : bare, {
    cwd: folder,
    env: { ...process.env, ...quietEnvironment, NODE_ENV: 'production', DATABASE_URL: `file:${databaseFile}` },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let printed = '';
  const keep = (chunk: Buffer) => {
    printed += chunk.toString();
  };
  child.stdout.on('data', keep);
  child.stderr.on('data', keep);
  const closed = new Promise<void>((resolve) => child.on('close', () => resolve()));
  const stop = async () => {
    child.kill('SIGTERM');
    await closed;
  };
  const url = `http://127.0.0.1:${port}`;
  const deadline = Date.now() + 60_000;
  while (Date.now() < deadline && child.exitCode === null) {
    const answered = await fetch(url, { redirect: 'manual' }).catch(() => null);
    if (answered) return { url, stop };
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  await stop();
  throw new Error(`The server did not start:\n${printed}`);
}
