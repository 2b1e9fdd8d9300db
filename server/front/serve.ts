// The server of the built pages, bundled by server/start/build-front.mjs: `node .next/serve.mjs --port 4310 --hostname 127.0.0.1`.
import { createServer } from 'node:http';
import { parseArgs } from 'node:util';
import next from 'next';
import { getLogger } from '../watching/logger';
import { createFront } from './create-front';

/** Some three hundred look-up pages, or as many look-ups as JSON. */
const MOST_BYTES = 48_000_000;

const { values } = parseArgs({ options: { port: { type: 'string' }, hostname: { type: 'string' } } });
const [port, hostname] = [Number(values.port), values.hostname ?? '127.0.0.1'];

const pages = next({ dev: false, dir: process.cwd(), hostname, port });
await pages.prepare();
const handle = pages.getRequestHandler();
const answer = createFront((request, response) => handle(request, response), { mostBytes: MOST_BYTES });

const server = createServer((request, response) => {
  answer(request, response).catch((error: unknown) => {
    getLogger().error({ err: error }, 'A request could not be answered.');
    if (response.headersSent) response.destroy();
    else response.writeHead(500, { 'content-type': 'text/plain; charset=utf-8' }).end('Something went wrong on our side. It was logged.\n');
  });
});
server.on('error', (error) => {
  console.error(`The server could not start: ${error.message}`);
  process.exit(1);
});
server.listen(port, hostname);

let stopping = false;
for (const [signal, code] of [['SIGINT', 130], ['SIGTERM', 143]] as const) {
  process.on(signal, () => {
    if (stopping) return;
    stopping = true;
    // What is being answered is answered first.
    server.close(() => void pages.close().finally(() => process.exit(code)));
  });
}
