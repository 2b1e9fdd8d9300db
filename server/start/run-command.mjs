import { spawn } from 'node:child_process';
import { projectFolder } from './project-folder.mjs';

/** Nothing that is started here reports home. */
export const quietEnvironment = {
  NEXT_TELEMETRY_DISABLED: '1',
  CHECKPOINT_DISABLE: '1',
  DISABLE_PRISMA_TELEMETRY: '1',
  npm_config_update_notifier: 'false',
};

/** @type {NodeJS.Signals[]} */
const stopSignals = ['SIGINT', 'SIGTERM', 'SIGHUP'];

/**
 * Runs a program in the project folder and collects what it prints.
 *
 * @param {string} program
 * @param {string[]} args
 * @param {{ env?: Record<string, string>, onLine?: (line: string) => void }} [options] onLine gets each line of output as it comes
 * @returns {Promise<{ code: number, output: string }>} exit code (1 when it could not be started) and both streams together
 */
export function runCommand(program, args, { env = {}, onLine } = {}) {
  return new Promise((resolve) => {
    const child = spawn(program, args, {
      cwd: projectFolder,
      env: { ...process.env, ...quietEnvironment, ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
      // npm and apt-get are scripts; on Windows those start only through a shell.
      shell: process.platform === 'win32' && program === 'npm',
    });
    // Stopped while it works: what it started must not go on alone.
    const stop = () => {
      child.kill();
      process.exit(130);
    };
    for (const signal of stopSignals) process.on(signal, stop);
    let output = '';
    let rest = '';
    const take = (/** @type {Buffer} */ chunk) => {
      const text = chunk.toString();
      output += text;
      if (!onLine) return;
      const lines = (rest + text).split(/\r?\n/);
      rest = lines.pop() ?? '';
      for (const line of lines) onLine(line);
    };
    child.stdout.on('data', take);
    child.stderr.on('data', take);
    child.on('error', (error) => resolve({ code: 1, output: `${output}${error.message}` }));
    child.on('close', (code) => {
      for (const signal of stopSignals) process.off(signal, stop);
      if (onLine && rest !== '') onLine(rest);
      resolve({ code: code ?? 1, output });
    });
  });
}

/**
 * The same for a package's own script, run by this Node: no shell, and no dependence on the search path.
 * @param {string} script path below the project folder
 * @param {string[]} args
 * @param {Parameters<typeof runCommand>[2]} [options]
 * @returns {ReturnType<typeof runCommand>}
 */
export function runScript(script, args, options) {
  return runCommand(process.execPath, [script, ...args], options);
}

/**
 * The same for a TypeScript file of the project.
 * @param {string} file path below the project folder
 * @param {string[]} args
 * @param {Parameters<typeof runCommand>[2]} [options]
 * @returns {ReturnType<typeof runCommand>}
 */
export function runTypeScript(file, args, options) {
  return runScript('node_modules/tsx/dist/cli.mjs', [file, ...args], options);
}

/**
 * npm: the one that started this script, or the one on the search path.
 * @param {string[]} args
 * @returns {ReturnType<typeof runCommand>}
 */
export function runNpm(args) {
  const own = process.env.npm_execpath;
  return own?.endsWith('.js') ? runCommand(process.execPath, [own, ...args]) : runCommand('npm', args);
}

/**
 * The end of a long output, for a message.
 * @param {string} output
 * @param {number} [count]
 * @returns {string}
 */
export function lastLines(output, count = 25) {
  return output.trimEnd().split('\n').slice(-count).join('\n');
}
