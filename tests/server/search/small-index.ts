import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { SearchEngine } from '../../../server/search/search-engine';
import { createSqliteEngine } from '../../../server/search/sqlite-fts';
import { vocabularyWords } from '../../../shared/domain/casebook/vocabulary-words';
import { type SearchDocument, searchDocument } from '../../../shared/domain/search/search-document';
import type { CaseRecord } from '../../../shared/schemas/case';
import { type SearchQuery, searchQuerySchema } from '../../../shared/schemas/search';
import { smallCatalogue } from '../fixtures/small-catalogue';
import { smallVocabulary } from '../fixtures/small-vocabulary';

/** A folder of this test's own; removed when the test ends. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'second-bench-search-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

const words = vocabularyWords(smallVocabulary, smallCatalogue);

/** A case of the small world as its document. */
export const smallDocument = (record: CaseRecord): SearchDocument => searchDocument(words, record, false);

/** A SQLite engine on a file of this test's own; closed when the test ends. */
export function sqliteEngine(path = join(temporaryFolder(), 'index')): SearchEngine {
  const engine = createSqliteEngine(path);
  onTestFinished(() => engine.close());
  return engine;
}

/** Fills an index with documents, standing at the beginning of an empty feed. */
export async function fill(engine: SearchEngine, documents: readonly SearchDocument[]): Promise<void> {
  await engine.rebuild(batchesOf(documents), { cursor: 0, cursorCase: null, fingerprint: 'small' });
}

export async function* batchesOf<T>(all: readonly T[], size = 50): AsyncGenerator<T[]> {
  for (let start = 0; start < all.length; start += size) yield all.slice(start, start + size);
}

/** A whole query from the parts that a test is about. */
export const query = (parts: Partial<SearchQuery>): SearchQuery => searchQuerySchema.parse(parts);
