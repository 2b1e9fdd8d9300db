// Run by the start scripts: migrates the database that DATABASE_URL names, then prints what it holds as one line of JSON.
import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { applyMigrations } from '../../prisma/migrations';
import { createDb } from '../db';
import { getEnv } from '../env';
import { photoFolderOf } from '../photos/photo-files';
import { sweepPhotos } from '../services/photo-tidy';
import { operatorWords } from '../storage/operator-words';
import { openSqlite } from '../sqlite';

try {
  const { databaseUrl, databaseFile } = getEnv();
  mkdirSync(dirname(databaseFile), { recursive: true });
  const applied = await applyMigrations(databaseUrl);
  const database = openSqlite(databaseUrl);
  const count = (table: string) => database.prepare(`select count(*) from "${table}"`).pluck().get();
  console.log(JSON.stringify({ applied, cases: count('CaseFile'), vocabulary: count('Symptom') }));
  database.close();
  // Nothing serves photos yet: what belongs to none can go.
  const db = createDb(databaseUrl);
  await sweepPhotos({ db, photoFolder: photoFolderOf(databaseFile) });
  await db.$disconnect();
} catch (error) {
  console.error(operatorWords(error) ?? (error instanceof Error ? error.message : error));
  process.exitCode = 1;
}
