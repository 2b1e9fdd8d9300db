import { parseArgs } from 'node:util';
import { Refusal } from './refusal.mjs';

/**
 * Reads `--port N` and `--host H` of the commands that serve.
 *
 * @param {string[]} args as in process.argv.slice(2)
 * @param {{ command: string, port: number }} defaults the command for the help line, and its usual port
 * @returns {{ port: number, host: string }}
 * @throws {Refusal} on anything else, in one sentence
 */
export function serveOptions(args, { command, port }) {
  const usage = `npm ${command} -- --port ${port + 1}`;
  let values;
  try {
    ({ values } = parseArgs({ args, options: { port: { type: 'string' }, host: { type: 'string' } } }));
  } catch (error) {
    const said = error instanceof Error ? error.message.split(/[.;] /)[0] : String(error);
    throw new Refusal(`${said}; the options are --port and --host, as in: ${usage}`);
  }
  const wanted = values.port ?? String(port);
  const number = Number(wanted);
  if (!/^\d+$/.test(wanted) || number < 1 || number > 65_535) {
    throw new Refusal(`--port takes a number from 1 to 65535, not "${wanted}": ${usage}`);
  }
  return { port: number, host: values.host ?? '127.0.0.1' };
}
