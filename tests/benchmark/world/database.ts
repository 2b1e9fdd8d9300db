import { mkdirSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { applyMigrations } from '../../../prisma/migrations';
import { loadCasebook } from '../../../server/casebook/load-casebook';
import { writeSnapshot } from '../../../server/casebook/model-snapshot';
import { createDb } from '../../../server/db';
import { saveCatalogue } from '../../../server/repositories/catalogue-repository';
import { insertCases } from '../../../server/repositories/insert-cases';
import { saveVocabulary } from '../../../server/repositories/save-vocabulary';
import type { CaseRecord, CaseStatus } from '../../../shared/schemas/case';
import { drawCases, drawNarrative, randomOf } from './draw';
import { generatedCatalogue, generatedVocabulary } from './words';

const CHUNK = 3_000;

/** The generated world in a database of the program's own, with its snapshot. */
export async function fillDatabase(file: string, count: number, onProgress: (done: number) => void): Promise<void> {
  for (const end of ['', '-wal', '-shm', '.casebook', '-search']) rmSync(`${file}${end}`, { force: true });
  mkdirSync(dirname(file), { recursive: true });
  await applyMigrations(`file:${file}`);
  const db = createDb(`file:${file}`);
  try {
    await db.$transaction((tx) => saveVocabulary(tx, generatedVocabulary()), { timeout: 120_000 });
    await saveCatalogue(db, generatedCatalogue());
    let done = 0;
    for (const chunk of chunks(recordsOf(1, count, 'accepted'))) {
      await db.$transaction((tx) => insertCases(tx, chunk, { newId: missingId }), { timeout: 120_000 });
      done += chunk.length;
      onProgress(done);
    }
    await writeSnapshot(db, await loadCasebook(db));
  } finally {
    await db.$disconnect();
  }
}

/** Drawn cases with a text of 30 words. */
export function* recordsOf(seed: number, count: number, status: CaseStatus): Generator<CaseRecord> {
  const random = randomOf(seed + 1000);
  for (const record of drawCases(seed, count)) {
    yield { ...record, status, content: { ...record.content, narrative: drawNarrative(random, 30) } };
  }
}

function* chunks(records: Iterable<CaseRecord>): Generator<CaseRecord[]> {
  let chunk: CaseRecord[] = [];
  for (const record of records) {
    chunk.push(record);
    if (chunk.length < CHUNK) continue;
    yield chunk;
    chunk = [];
  }
  if (chunk.length > 0) yield chunk;
}

function missingId(): string {
  throw new Error('Every drawn case has its id.');
}
