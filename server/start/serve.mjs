import { spawn } from 'node:child_process';
import { frontFile } from './build-front.mjs';
import { projectFolder } from './project-folder.mjs';
import { quietEnvironment } from './run-command.mjs';

/**
 * What Node is given to serve the pages: in development the framework's own server, else the one that stands before the built pages.
 *
 * @param {'start' | 'dev'} mode
 * @param {{ port: number, host: string }} at
 * @returns {string[]} to be started in the project folder
 */
export function serverArguments(mode, { port, host }) {
  const program = mode === 'dev' ? ['node_modules/next/dist/bin/next', 'dev'] : [frontFile];
  return [...program, '--port', String(port), '--hostname', host];
}

/**
 * Starts the web server and hands on signals to it, so that stopping this process stops both.
 *
 * @param {'start' | 'dev'} mode
 * @param {{ port: number, host: string }} at
 * @returns {{ stopped: Promise<number>, ready: Promise<boolean> }} stopped: its exit code. ready: true once it answers,
 *   false when it stopped before.
 */
export function serve(mode, { port, host }) {
  const child = spawn(process.execPath, serverArguments(mode, { port, host }), {
    cwd: projectFolder,
    env: { ...process.env, ...quietEnvironment },
    stdio: ['ignore', mode === 'dev' ? 'inherit' : 'ignore', 'inherit'],
  });
  let running = true;
  let asked = false;
  for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) {
    process.on(signal, () => {
      asked = true;
      child.kill(signal === 'SIGHUP' ? 'SIGTERM' : signal);
    });
  }
  /** @type {Promise<number>} */
  const stopped = new Promise((resolve) => {
    child.on('close', (code) => {
      running = false;
      resolve(asked ? 0 : (code ?? 1));
    });
  });
  return { stopped, ready: answers(localAddress({ port, host }), () => running) };
}

/**
 * The address to open on this machine.
 * @param {{ port: number, host: string }} at
 * @returns {string}
 */
export function localAddress({ port, host }) {
  const name = ['0.0.0.0', '::', '127.0.0.1'].includes(host) ? 'localhost' : host;
  return `http://${name.includes(':') ? `[${name}]` : name}:${port}/`;
}

/** @param {string} address @param {() => boolean} running */
async function answers(address, running) {
  while (running()) {
    try {
      const response = await fetch(address, { redirect: 'manual' });
      await response.arrayBuffer();
      if (response.status >= 500) console.error(`The first page answers with an error (${response.status}); the lines above may say why.`);
      return true;
    } catch {
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
  }
  return false;
}
