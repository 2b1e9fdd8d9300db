import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Db } from '../db';
import { findDatabaseFile } from '../repositories/database-file';
import { getLogger } from '../watching/logger';
import type { UpkeepJob } from './upkeep-jobs';

/** Where `server/start/build-upkeep-program.mjs` puts the bundled program; elsewhere than on the built site it may be of older sources. */
const builtFile = () => (process.env.NODE_ENV === 'production' ? join(process.cwd(), '.next/upkeep-program.mjs') : '');

/** The bundler may load this module several times in one process; a job is done by one program at a time in all of it. */
const kept = globalThis as typeof globalThis & { secondBenchUpkeep?: Partial<Record<UpkeepJob, Promise<unknown>>> };

/**
 * Does a job of upkeep in a program of its own, so that nobody waits for it meanwhile and the memory that it needs is given back.
 * Returns false where it was not done: no program was built (in development, on the command line), or it has failed, which the
 * log says. The caller then does without.
 */
export async function upkeepAside(db: Db, job: UpkeepJob, file: string = builtFile()): Promise<boolean> {
  kept.secondBenchUpkeep ??= {};
  const underWay = kept.secondBenchUpkeep;
  const before = underWay[job];
  const mine = (async () => {
    await before?.catch(() => {});
    const databaseFile = existsSync(file) ? await findDatabaseFile(db) : null;
    return databaseFile !== null && (await runProgram(file, job, databaseFile));
  })();
  underWay[job] = mine;
  return mine;
}

/** Never rejects. */
async function runProgram(file: string, job: UpkeepJob, databaseFile: string): Promise<boolean> {
  // Asked for at run time: the bundler of the pages would look for the program's file among its sources.
  const { fork } = process.getBuiltinModule('node:child_process');
  try {
    await new Promise<void>((resolve, reject) => {
      const program = fork(file, [job, databaseFile], { execArgv: [], stdio: ['ignore', 'ignore', 'inherit', 'ipc'] });
      program.on('error', reject);
      program.on('exit', (code, signal) => (code === 0 ? resolve() : reject(new Error(`The program for upkeep has ended early (${signal ?? code}).`))));
    });
    return true;
  } catch (error) {
    getLogger().error({ err: error, job }, 'The program for upkeep has failed; what it was to do is done without it.');
    return false;
  }
}
