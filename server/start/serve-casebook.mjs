import { serveOptions } from './options.mjs';
import { requirePort } from './port.mjs';
import { preparePackages, preparePages, settleDatabase } from './prepare.mjs';
import { prepareDatabase } from './prepare-database.mjs';
import { localAddress, serve } from './serve.mjs';

/**
 * From a bare clone to a served casebook; what is already done is not done again.
 *
 * @param {{ command: string, demo: boolean }} options command: how npm calls this. demo: fill an empty database with the demo world
 * @returns {Promise<number>} the server's exit code, once it has stopped
 * @throws {import('./refusal.mjs').Refusal}
 */
export async function serveCasebook({ command, demo }) {
  const at = serveOptions(process.argv.slice(2), { command, port: 4310 });
  const database = settleDatabase();
  await requirePort({ ...at, command });
  await preparePackages();
  await prepareDatabase({ demo });
  await preparePages();
  Object.assign(process.env, { NODE_ENV: 'production' });
  const { ready, stopped } = serve('start', at);
  if (await ready) console.log(`\nSecond Bench is ready at ${localAddress(at)}\nIts data is in ${database}. Stop it with Ctrl+C.`);
  return stopped;
}
