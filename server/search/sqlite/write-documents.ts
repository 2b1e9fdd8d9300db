import type { Database } from 'better-sqlite3';
import { SEARCH_FIELDS, type SearchDocument } from '../../../shared/domain/search/search-document';
import type { IndexState } from '../search-engine';

/** Writes documents into the tables of an index. To be called inside a transaction. */
export type DocumentWriter = {
  put(document: SearchDocument): void;
  remove(id: string): void;
  /** Writes the counts of words, which are gathered until then. */
  finish(): void;
};

const WORD = /[\p{L}\p{N}][\p{L}\p{N}\p{M}]*/gu;
/** Longer runs are no words; shorter ones are not corrected. */
const WORD_LENGTHS = { least: 3, most: 24 };

export function documentWriter(file: Database): DocumentWriter {
  const places = SEARCH_FIELDS.map(() => '?').join(', ');
  const newest = file.prepare('SELECT max(coalesce((SELECT max(doc) FROM case_doc), 0), coalesce((SELECT max(doc) FROM case_gone), 0))').pluck();
  const find = file.prepare('SELECT doc FROM case_doc WHERE id = ?').pluck();
  const texts = file.prepare(`SELECT ${SEARCH_FIELDS.join(', ')} FROM case_text WHERE rowid = ?`).raw();
  const addText = file.prepare(`INSERT INTO case_text (rowid, ${SEARCH_FIELDS.join(', ')}) VALUES (?, ${places})`);
  const addBlank = file.prepare('INSERT INTO case_text (rowid, symptoms) VALUES (?, NULL)');
  const addDoc = file.prepare('INSERT INTO case_doc VALUES (@doc, @id, @month, @year, @category, @outcome, @proof, @photos)');
  const addTag = file.prepare('INSERT OR IGNORE INTO case_tag VALUES (?, ?, ?)');
  const removals = ['case_text WHERE rowid IN (?, ? + 1)', 'case_doc WHERE doc IN (?, ? + 1)', 'case_tag WHERE doc IN (?, ? + 1)'].map((what) =>
    file.prepare(`DELETE FROM ${what}`),
  );
  const addGone = file.prepare('INSERT INTO case_gone VALUES (?)');
  const counts = new Map<string, number>();
  const count = (fields: readonly unknown[], by: number) => {
    for (const word of distinctWords(fields)) counts.set(word, (counts.get(word) ?? 0) + by);
  };
  let last = newest.get() as number;

  const remove = (id: string) => {
    const doc = find.get(id) as number | undefined;
    if (doc === undefined) return;
    count(texts.get(doc) as unknown[], -1);
    for (const removal of removals) removal.run(doc, doc);
    addGone.run(doc);
  };
  const put = (document: SearchDocument) => {
    remove(document.id);
    last += 2;
    const fields = SEARCH_FIELDS.map((field) => document[field]);
    addText.run(last, ...fields);
    addBlank.run(last + 1);
    const { id, month, year, category, outcome, proof, photos } = document;
    addDoc.run({ doc: last, id, month, year, category, outcome, proof, photos });
    for (const value of document.symptomSlugs) addTag.run(last, 'symptom', value);
    for (const value of document.causeSlugs) addTag.run(last, 'cause', value);
    for (const value of document.deviceSlugs) addTag.run(last, 'device', value);
    count(fields, 1);
  };
  return { put, remove, finish: () => writeCounts(file, counts) };
}

function distinctWords(fields: readonly unknown[]): Set<string> {
  const words = new Set<string>();
  for (const field of fields) {
    for (const word of String(field ?? '').toLowerCase().match(WORD) ?? []) {
      if (word.length >= WORD_LENGTHS.least && word.length <= WORD_LENGTHS.most) words.add(word);
    }
  }
  return words;
}

function writeCounts(file: Database, counts: Map<string, number>): void {
  const add = file.prepare('INSERT INTO word VALUES (?, ?) ON CONFLICT (word) DO UPDATE SET cases = cases + excluded.cases');
  for (const [word, by] of counts) if (by !== 0) add.run(word, by);
  file.exec('DELETE FROM word WHERE cases <= 0');
  counts.clear();
}

/** Takes every document out. `made` tells whoever keeps something of the index in memory that it is another one. */
export function clearDocuments(file: Database): void {
  const made = file.prepare("SELECT coalesce((SELECT CAST(value AS INTEGER) FROM state WHERE name = 'made'), 0) + 1").pluck().get();
  for (const table of ['case_text', 'case_doc', 'case_tag', 'case_gone', 'word', 'state']) file.exec(`DELETE FROM ${table}`);
  file.prepare("INSERT INTO state VALUES ('made', ?)").run(String(made));
}

/** The state that the index stands at, or null where nothing was indexed yet. */
export function readState(file: Database): IndexState | null {
  const text = file.prepare("SELECT value FROM state WHERE name = 'state'").pluck().get() as string | undefined;
  return text === undefined ? null : (JSON.parse(text) as IndexState);
}

export function writeState(file: Database, { cursor, cursorCase, fingerprint }: IndexState): void {
  file.prepare("INSERT OR REPLACE INTO state VALUES ('state', ?)").run(JSON.stringify({ cursor, cursorCase, fingerprint }));
}

export function isSameState(a: IndexState | null, b: IndexState | null): boolean {
  if (a === null || b === null) return a === b;
  return a.cursor === b.cursor && a.cursorCase === b.cursorCase && a.fingerprint === b.fingerprint;
}
