import Database from 'better-sqlite3';
import { HIGHLIGHT_CLOSE, HIGHLIGHT_OPEN } from '../../../shared/domain/search/search-document';

/** How a text is cut into words, here and in the index: with inflections and without accents. */
export const TOKENIZER = "tokenize = 'porter unicode61 remove_diacritics 2'";
/** Words of a snippet. */
export const SNIPPET_WORDS = 28;

/** The SQL of a snippet of a full-text table's column, marked. */
export const snippetOf = (table: string, column: number) =>
  `snippet(${table}, ${column}, '${HIGHLIGHT_OPEN}', '${HIGHLIGHT_CLOSE}', '…', ${SNIPPET_WORDS})`;

/**
 * Marks the words in a page of texts, in a small full text of its own in memory: asking the whole index for the snippets of
 * twenty cases costs a walk over all that are found. Texts without any of the words are left out.
 */
export function pageMarker(): { mark: (texts: ReadonlyMap<number, string>, words: string) => Map<number, string>; close: () => void } {
  const memory = new Database(':memory:');
  memory.exec(`CREATE VIRTUAL TABLE page USING fts5(narrative, ${TOKENIZER})`);
  const insert = memory.prepare('INSERT INTO page (rowid, narrative) VALUES (?, ?)');
  const marked = memory.prepare(`SELECT rowid, ${snippetOf('page', 0)} FROM page WHERE page MATCH ?`).raw();
  const [begin, rollback] = [memory.prepare('BEGIN'), memory.prepare('ROLLBACK')];
  const mark = (texts: ReadonlyMap<number, string>, words: string) => {
    begin.run();
    try {
      for (const [doc, text] of texts) insert.run(doc, text);
      return new Map(marked.all(words) as [number, string][]);
    } finally {
      rollback.run();
    }
  };
  return { mark, close: () => memory.close() };
}
