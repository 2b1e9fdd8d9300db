// `npm run migrate`: brings the database that DATABASE_URL names up to date.
import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { getEnv } from '../server/env';
import { applyMigrations } from './migrations';

try {
  const { databaseUrl, databaseFile } = getEnv();
  mkdirSync(dirname(databaseFile), { recursive: true });
  const applied = await applyMigrations(databaseUrl);
  console.log(applied.length === 0 ? 'The database is up to date.' : `Applied ${applied.join(', ')}.`);
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
