import { setImmediate, setTimeout } from 'node:timers/promises';
import type { Database } from 'better-sqlite3';
import { parseWords } from '../../shared/domain/search/parse-words';
import { readMarks } from '../../shared/domain/search/read-marks';
import type { SearchDocument } from '../../shared/domain/search/search-document';
import type { SearchQuery, SearchResult } from '../../shared/schemas/search';
import type { IndexChange, IndexState, SearchEngine } from './search-engine';
import { readCursor, writeCursor } from './search-cursor';
import { columnReader } from './sqlite/case-columns';
import { termExpander } from './sqlite/expand-terms';
import { docFinder } from './sqlite/find-docs';
import { isBusy, openIndexFile } from './sqlite/index-file';
import { narrowFound, noFacets } from './sqlite/narrow-found';
import { cursorKey, foundOrder, isByScore } from './sqlite/order-found';
import { clearDocuments, documentWriter, isSameState, readState, writeState } from './sqlite/write-documents';

/** How often a rebuild asks for the lock, and how long it waits in between: nearly two minutes, as long as another rebuild may take. */
const BEGIN_TRIES = 1_000;
const BEGIN_PAUSE_MS = 100;

/**
 * The engine that needs nothing: SQLite's full text in a file of its own beside the database. A word is found in any
 * inflection and usual spelling; the last one may still be typed; one that stands in no case is corrected to the
 * nearest that does. Cases with all the words are listed alone unless there are few of them.
 *
 * @param path of the index file; it is made where it is missing.
 */
export function createSqliteEngine(path: string): SearchEngine {
  const file = openIndexFile(path);
  const { search, close } = searcher(file);
  return {
    name: 'sqlite',
    search: async (query) => search(query),
    state: async () => readState(file),
    apply: async (change, from, to) => applyChange(file, change, from, to),
    rebuild: (batches, state) => rebuildFile(path, batches, state),
    close: async () => {
      close();
      file.close();
    },
  };
}

/** What a connection keeps prepared for searching. */
function searcher(file: Database): { search: (query: SearchQuery) => SearchResult; close: () => void } {
  const expand = termExpander(file);
  const columnsOf = columnReader(file);
  const { find, snippets, close } = docFinder(file);
  const pageOf = foundOrder(file);
  const answer = (query: SearchQuery): SearchResult => {
    const terms = parseWords(query.text);
    const { groups, pairs, corrections, unknown } = expand(terms);
    const told = { engine: 'sqlite' as const, corrections, unknown };
    const isWanted = terms.some((term) => !term.not);
    if (isWanted && !groups.some((group) => !group.not)) {
      return { ...told, total: 0, hits: [], facets: query.facets ? noFacets() : null, matched: 'all', next: null };
    }
    const columns = columnsOf();
    const all = find(groups, pairs, columns);
    const { kept, facets } = narrowFound(columns, all.found, query.filters);
    const cursor = readCursor(query.cursor);
    const { rows, hasMore } = pageOf(columns, kept, query, cursor);
    const texts = snippets(all, rows.map((row) => row.doc));
    const last = rows.at(-1);
    return {
      ...told,
      total: kept.docs.length,
      hits: rows.map(({ doc, id, score }) => ({ id, score, ...readMarks(texts.get(doc) ?? '') })),
      facets: query.facets ? facets : null,
      matched: all.matched,
      next: hasMore && last ? writeCursor({ key: cursorKey(last, isByScore(query, kept)), id: last.id, seen: (cursor?.seen ?? 0) + rows.length }) : null,
    };
  };
  // In one transaction, so that all of it sees one state of the index.
  return { search: file.transaction(answer), close };
}

function applyChange(file: Database, { put, remove }: IndexChange, from: IndexState, to: IndexState): boolean {
  return file
    .transaction(() => {
      if (!isSameState(readState(file), from)) return false;
      const writer = documentWriter(file);
      for (const id of remove) writer.remove(id);
      for (const document of put) writer.put(document);
      writer.finish();
      writeState(file, to);
      return true;
    })
    .immediate();
}

/**
 * On a connection of its own and in one transaction: until it ends, every other connection goes on with the old index.
 * The batches are read in between, so that nothing else has to wait for them.
 */
async function rebuildFile(path: string, batches: AsyncIterable<readonly SearchDocument[]>, state: IndexState): Promise<void> {
  const file = openIndexFile(path);
  try {
    await beginWhenFree(file);
    clearDocuments(file);
    const writer = documentWriter(file);
    for await (const batch of batches) {
      for (const document of batch) writer.put(document);
      // Whoever else waits for this process is served between two batches.
      await setImmediate();
    }
    writer.finish();
    file.exec("INSERT INTO case_text (case_text) VALUES ('optimize')");
    writeState(file, state);
    file.exec('COMMIT; PRAGMA wal_checkpoint(TRUNCATE)');
  } finally {
    if (file.inTransaction) file.exec('ROLLBACK');
    file.close();
  }
}

/** Takes the write lock, and lets this process go on with other things while another program has it. */
async function beginWhenFree(file: Database): Promise<void> {
  for (let tries = 1; ; tries++) {
    try {
      file.exec('BEGIN IMMEDIATE');
      return;
    } catch (error) {
      if (!isBusy(error) || tries >= BEGIN_TRIES) throw error;
      await setTimeout(BEGIN_PAUSE_MS);
    }
  }
}
