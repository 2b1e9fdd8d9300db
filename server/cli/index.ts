import { existsSync } from 'node:fs';
import type { PrismaClient } from '../../prisma/generated/client';
import { getDb } from '../db';
import { getEnv } from '../env';
import { randomCaseId } from '../ids';
import type { CaseSearch } from '../search/case-search';
import { openSearch } from '../search/current-search';
import { CommandError } from './io';
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
  },
  process.argv.slice(2),
);
await (search as CaseSearch | null)?.close();
await (opened as PrismaClient | null)?.$disconnect();
