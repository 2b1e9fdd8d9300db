import { createInterface } from 'node:readline';
import { Writable } from 'node:stream';

/**
 * Reads one line from standard input: from a terminal without showing what is typed, from a pipe as it comes.
 *
 * @param prompt shown on standard error, so that output stays clean.
 * @returns the line without its end; '' where there is none.
 */
export function readSecret(prompt: string): Promise<string> {
  const hidden = new Writable({ write: (_chunk, _encoding, done) => done() });
  process.stderr.write(prompt);
  const lines = createInterface({ input: process.stdin, output: hidden, terminal: process.stdin.isTTY === true });
  return new Promise((resolve) => {
    let line = '';
    lines.once('line', (text) => {
      line = text;
      lines.close();
    });
    lines.once('SIGINT', () => {
      process.stderr.write('\n');
      process.exit(130);
    });
    lines.once('close', () => {
      if (process.stdin.isTTY) process.stderr.write('\n');
      resolve(line);
    });
  });
}
