import { createServer } from 'node:net';
import { Refusal } from './refusal.mjs';

/**
 * Whether the port can be listened on; resolves to the system's error code when it cannot.
 * @param {number} port 0 for any
 * @param {string} host
 * @returns {Promise<{ code: string | null, port: number }>} the port that was tried
 */
function tryPort(port, host) {
  return new Promise((resolve) => {
    const server = createServer();
    server.once('error', (/** @type {NodeJS.ErrnoException} */ error) => resolve({ code: error.code ?? error.message, port }));
    server.listen(port, host, () => {
      const address = server.address();
      const found = typeof address === 'object' && address !== null ? address.port : port;
      server.close(() => resolve({ code: null, port: found }));
    });
  });
}

/**
 * @param {{ port: number, host: string, command: string }} wanted
 * @returns {Promise<void>}
 * @throws {Refusal} when the port is taken or forbidden
 */
export async function requirePort({ port, host, command }) {
  const { code } = await tryPort(port, host);
  if (code === null) return;
  const other = `npm ${command} -- --port ${port < 65_535 ? port + 1 : port - 1}`;
  if (code === 'EADDRINUSE') throw new Refusal(`Port ${port} is taken: stop what uses it, or choose another: ${other}`);
  if (code === 'EACCES') throw new Refusal(`Port ${port} needs special rights on this system: choose one above 1023: ${other}`);
  throw new Refusal(`Port ${port} at ${host} cannot be used (${code}): choose another: ${other}`);
}

/**
 * A port that nothing listens on now.
 * @returns {Promise<number>}
 */
export async function freePort() {
  return (await tryPort(0, '127.0.0.1')).port;
}
