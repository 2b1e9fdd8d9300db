import type { Database } from 'better-sqlite3';
import { parseWords } from '../../shared/domain/search/parse-words';
import { readMarks } from '../../shared/domain/search/read-marks';
import { HIGHLIGHT_CLOSE, HIGHLIGHT_OPEN, SEARCH_FIELDS, type SearchDocument } from '../../shared/domain/search/search-document';
import { FILTER_NAMES, type SearchFacets, type SearchHit, type SearchQuery, type SearchResult } from '../../shared/schemas/search';
import type { IndexChange, IndexState, SearchEngine } from './search-engine';
import { readCursor, type SearchCursor, writeCursor } from './search-cursor';
import { termExpander } from './sqlite/expand-terms';
import { openIndexFile } from './sqlite/index-file';
import { type MatchText, matchText, wholeMatch } from './sqlite/match-text';
import { facetStatement, pageStatement, scoreStatement, type Statement, totalStatement } from './sqlite/search-statements';
import { clearDocuments, documentWriter, isSameState, readState, writeState } from './sqlite/write-documents';

/** Where fewer cases than these have all the words, those with some of them are listed after them. */
const FEW = 5;
/** Words of a snippet. */
const SNIPPET_WORDS = 28;

/**
 * The engine that needs nothing: SQLite's full text in a file of its own beside the database. A word is found in any
 * inflection and usual spelling; the last one may still be typed; one that stands in no case is corrected to the
 * nearest that does. Cases with all the words come first, and
 * alone unless there are very few of them.
 *
 * @param path of the index file; it is made where it is missing.
 */
export function createSqliteEngine(path: string): SearchEngine {
  const file = openIndexFile(path);
  const expand = termExpander(file);
  return {
    name: 'sqlite',
    search: async (query) => searchFile(file, expand, query),
    state: async () => readState(file),
    apply: async (change, from, to) => applyChange(file, change, from, to),
    rebuild: (batches, state) => rebuildFile(path, batches, state),
    close: async () => {
      file.close();
    },
  };
}

type Expand = ReturnType<typeof termExpander>;
type Row = { doc: number; id: string; score: number; month: string };

function searchFile(file: Database, expand: Expand, query: SearchQuery): SearchResult {
  const terms = parseWords(query.text);
  const { groups, corrections, unknown } = expand(terms);
  const told = { engine: 'sqlite' as const, corrections, unknown };
  const isWanted = terms.some((term) => !term.not);
  if (isWanted && !groups.some((group) => !group.not)) {
    return { ...told, total: 0, hits: [], facets: query.facets ? noFacets() : null, matched: 'all', next: null };
  }
  let matched: 'all' | 'some' = 'all';
  let match = matchText(groups, 'all');
  if (match.must !== null && groups.filter((group) => !group.not).length > 1 && countUpTo(file, match, FEW) < FEW) {
    matched = 'some';
    match = matchText(groups, 'some');
  }
  const cursor = readCursor(query.cursor);
  const rows = pageRows(file, query, match, cursor);
  const page = rows.slice(0, query.take);
  return {
    ...told,
    total: countAll(file, query, match),
    hits: page.map((row) => hitOf(file, match, row)),
    facets: query.facets ? countFacets(file, query, match) : null,
    matched,
    next: rows.length > query.take ? cursorAfter(query, match, page, cursor) : null,
  };
}

function run(file: Database, { sql }: Statement) {
  return file.prepare(sql);
}

function countAll(file: Database, query: SearchQuery, match: MatchText): number {
  const statement = totalStatement(match, query.filters);
  return run(file, statement).pluck().get(statement.values) as number;
}

/** How many cases are found, counted no further than `most`. */
function countUpTo(file: Database, match: MatchText, most: number): number {
  const rows = 'SELECT 1 FROM case_text WHERE case_text MATCH ? LIMIT ?';
  return file.prepare(`SELECT count(*) FROM (${rows})`).pluck().get(wholeMatch(match), most) as number;
}

const isByScore = (query: SearchQuery, match: MatchText) => query.sort === 'relevance' && match.must !== null;

function pageRows(file: Database, query: SearchQuery, match: MatchText, cursor: SearchCursor | null): Row[] {
  const after = cursor === null ? null : placeNow(file, query, match, cursor);
  const statement = pageStatement({ match, filters: query.filters, sort: query.sort, take: query.take, after });
  return run(file, statement).all(statement.values) as Row[];
}

/** Where the page before ended, by the scores of now. Null for a cursor of another order. */
function placeNow(file: Database, query: SearchQuery, match: MatchText, { key, id }: SearchCursor): { key: number | string; id: string } | null {
  if (isByScore(query, match) !== (typeof key === 'number')) return null;
  if (typeof key === 'string') return { key, id };
  const statement = scoreStatement(match, id);
  const now = run(file, statement).pluck().get(statement.values) as number | undefined;
  return { key: now ?? key, id };
}

function cursorAfter(query: SearchQuery, match: MatchText, page: readonly Row[], before: SearchCursor | null): string | null {
  const last = page.at(-1);
  if (!last) return null;
  const key = isByScore(query, match) ? last.score : last.month;
  return writeCursor({ key, id: last.id, seen: (before?.seen ?? 0) + page.length });
}

function hitOf(file: Database, match: MatchText, { doc, id, score }: Row): SearchHit {
  const column = SEARCH_FIELDS.indexOf('narrative');
  const marked =
    match.must === null
      ? file.prepare('SELECT narrative FROM case_text WHERE rowid = ?').pluck().get(doc)
      : file
          .prepare(`SELECT snippet(case_text, ${column}, ?, ?, '…', ${SNIPPET_WORDS}) FROM case_text WHERE case_text MATCH ? AND rowid = CAST(? AS INTEGER)`)
          .pluck()
          .get(HIGHLIGHT_OPEN, HIGHLIGHT_CLOSE, wholeMatch(match), doc);
  const text = String(marked ?? '');
  return { id, score, ...readMarks(match.must === null ? beginningOf(text) : text) };
}

/** The first words of a text. */
function beginningOf(text: string): string {
  const words = text.trim().split(/\s+/);
  return words.length <= SNIPPET_WORDS ? text : `${words.slice(0, SNIPPET_WORDS).join(' ')}…`;
}

function noFacets(): SearchFacets {
  return Object.fromEntries(FILTER_NAMES.map((name) => [name, {}])) as SearchFacets;
}

function countFacets(file: Database, query: SearchQuery, match: MatchText): SearchFacets {
  const facets = noFacets();
  const statement = facetStatement(match, query.filters);
  for (const [name, value, cases] of run(file, statement).raw().all(statement.values) as [keyof SearchFacets, string, number][]) {
    facets[name][value] = cases;
  }
  return facets;
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
    file.exec('BEGIN IMMEDIATE');
    clearDocuments(file);
    const writer = documentWriter(file);
    for await (const batch of batches) for (const document of batch) writer.put(document);
    writer.finish();
    file.exec("INSERT INTO case_text (case_text) VALUES ('optimize')");
    writeState(file, state);
    file.exec('COMMIT; PRAGMA wal_checkpoint(TRUNCATE)');
  } finally {
    if (file.inTransaction) file.exec('ROLLBACK');
    file.close();
  }
}
