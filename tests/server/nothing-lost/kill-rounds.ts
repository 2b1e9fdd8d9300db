import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const WORKER = fileURLToPath(new URL('./kill-worker.ts', import.meta.url));
/** Below the project, so that a program there finds the packages. */
const OUTPUT = fileURLToPath(new URL('../../output/', import.meta.url));

/** What the worker said of a thing: how it stood when last told; null where nothing was said to be done yet. */
export type Told = { status: string; content: string } | null;
/** What the worker has said so far, by the key of what it was about: a case's id, `photo:<id>`, `synonym:<text>` or `index`. */
export type Account = { told: Map<string, Told>; underWay: Map<string, string>; done: number };

export type KillRound = { afterMs: number; done: number; underWay: string[] };

export const newAccount = (): Account => ({ told: new Map(), underWay: new Map(), done: 0 });

/** Makes one file of the worker, so that a round does not wait for its parts to be compiled. */
export async function bundleWorker(): Promise<{ file: string; remove: () => void }> {
  mkdirSync(OUTPUT, { recursive: true });
  const file = join(OUTPUT, `kill-worker-${process.pid}.mjs`);
  await build({
    entryPoints: [WORKER],
    outfile: file,
    bundle: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
    logLevel: 'error',
  });
  return { file, remove: () => rmSync(file, { force: true }) };
}

type RoundOptions = {
  /** The bundled worker. */
  worker: string;
  seed: number;
  /** How long it works on before it is killed, in milliseconds, counted from when it has done enough. */
  afterMs: number;
  /** Whether what it said so far is enough; the first thing done is, unless given. However slow the machine, this is waited for. */
  enough?: (account: Account) => boolean;
};

/** Starts the worker on a database, kills it without warning after a while, and remembers what it had said. */
export async function killRound(
  databaseFile: string,
  account: Account,
  { worker, seed, afterMs, enough = () => true }: RoundOptions,
): Promise<KillRound> {
  const env = { ...process.env, DATABASE_URL: `file:${databaseFile}`, NODE_ENV: 'production' as const, LOG_LEVEL: 'error' };
  const child = spawn(process.execPath, [worker, databaseFile, String(seed)], { env, stdio: ['ignore', 'pipe', 'pipe'] });
  let trouble = '';
  child.stderr.on('data', (chunk) => {
    trouble += chunk;
  });
  const ended = once(child, 'close');
  const before = account.done;
  let isCounting = false;
  account.underWay.clear();
  for await (const line of createInterface({ input: child.stdout })) {
    const said = JSON.parse(line) as { about?: string; op?: string; done?: string; status?: string; content?: string };
    if (said.about) {
      account.underWay.set(said.about, said.op ?? '');
      if (!account.told.has(said.about)) account.told.set(said.about, null);
    }
    if (said.done) {
      account.told.set(said.done, { status: said.status ?? '', content: said.content ?? '' });
      account.underWay.delete(said.done);
      account.done++;
      // Loading the program takes most of a round, and is not counted.
      if (!isCounting && enough(account)) {
        isCounting = true;
        setTimeout(() => child.kill('SIGKILL'), afterMs);
      }
    }
  }
  await ended;
  if (child.signalCode !== 'SIGKILL') throw new Error(`The worker ended by itself: ${trouble}`);
  return { afterMs, done: account.done - before, underWay: [...account.underWay.values()] };
}
