import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Db } from '../db';
import { findDatabaseFile } from '../repositories/database-file';
import { getLogger } from '../watching/logger';
import { DONE, type UpkeepJob, type UpkeepOrder } from './upkeep-messages';

/** Where `server/start/build-upkeep-worker.mjs` puts the bundled thread; elsewhere than on the built site it may be of older sources. */
const builtFile = () => (process.env.NODE_ENV === 'production' ? join(process.cwd(), '.next/upkeep-worker.mjs') : '');

/** The bundler may load this module several times in one process; jobs are done one after the other in all of it. */
const kept = globalThis as typeof globalThis & { secondBenchUpkeep?: Promise<unknown> };

/**
 * Does a job of upkeep in a thread of its own, so that nobody waits for it meanwhile. Returns false where it was not done: no
 * thread was built (in development, on the command line), or it has failed, which the log says. The caller then does without.
 */
export async function upkeepAside(db: Db, job: UpkeepJob, file: string = builtFile()): Promise<boolean> {
  const before = kept.secondBenchUpkeep;
  const mine = (async () => {
    await before;
    const databaseFile = existsSync(file) ? await findDatabaseFile(db) : null;
    return databaseFile !== null && (await runThread(file, { job, databaseFile }));
  })();
  kept.secondBenchUpkeep = mine;
  return mine;
}

/** Never rejects. */
async function runThread(file: string, order: UpkeepOrder): Promise<boolean> {
  // Asked for at run time: the bundler of the pages would look for the thread's file among its sources.
  const { Worker } = process.getBuiltinModule('node:worker_threads');
  try {
    await new Promise<void>((resolve, reject) => {
      const worker = new Worker(file, { workerData: order });
      let isDone = false;
      worker.on('message', (told) => {
        isDone ||= told === DONE;
      });
      worker.on('error', reject);
      worker.on('exit', (code) => (isDone ? resolve() : reject(new Error(`The thread for upkeep has ended early (${code}).`))));
    });
    return true;
  } catch (error) {
    getLogger().error({ err: error, job: order.job }, 'The thread for upkeep has failed; what it was to do is done without it.');
    return false;
  }
}
