import { existsSync } from 'node:fs';
import type { PrismaClient } from '../../prisma/generated/client';
import { getDb } from '../db';
import { getEnv } from '../env';
import { randomCaseId } from '../ids';
import type { CaseSearch } from '../search/case-search';
import { openSearch } from '../search/open-search';
import { CommandError, type CommandIo } from './io';
import { runProgram } from './program';
import { readSecret } from './read-secret';

// A reader that closes early ("export | head") is no failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});

let opened: PrismaClient | null = null;
let search: CaseSearch | null = null;

function openDb(): PrismaClient {
  const { databaseFile } = getEnv();
  if (!existsSync(databaseFile)) {
    throw new CommandError(`There is no casebook at ${databaseFile}. Run "npm run demo" or "npm run migrate" first.`);
  }
  opened ??= getDb();
  return opened;
}

function openCaseSearch(): CaseSearch {
  search ??= openSearch(openDb(), getEnv());
  return search;
}

/**
 * Runs the command line on this process's arguments, output and database, and closes what it opened.
 * @param beside what a starting point outside `server` brings along
 */
export async function runCommandLine(beside: Pick<CommandIo, 'demoWorld'> = {}): Promise<void> {
  process.exitCode = await runProgram(
    {
      db: openDb,
      search: openCaseSearch,
      out: (text) => process.stdout.write(text),
      err: (text) => process.stderr.write(text),
      now: () => new Date(),
      newId: randomCaseId,
      readSecret,
      actor: 'command line',
      ...beside,
    },
    process.argv.slice(2),
  );
  await search?.close();
  await opened?.$disconnect();
}
