import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import type { SearchDocument } from '../../../shared/domain/search/search-document';
import { bm25, inverseDocumentFrequency } from '../../../shared/stats/bm25';
import { plainCase } from '../fixtures/plain-case';
import { fill, query, smallDocument, sqliteEngine, temporaryFolder } from './small-index';

// The six texts and the scores that a real SQLite gave for them (BM25 as in ext/fts5/fts5_aux.c).
const TEXTS = [
  'no picture no sound',
  'no sound after power on',
  'black screen with sound',
  'garbled picture after warm up',
  'keyboard dead key',
  'power led off no boot',
];

/** A document of nothing but its narrative. */
function bare(number: number, narrative: string): SearchDocument {
  const blank = { symptoms: '', causes: '', device: '', steps: '', synonyms: '', symptomSlugs: [], causeSlugs: [], deviceSlugs: [] };
  return { ...smallDocument(plainCase(number)), ...blank, narrative };
}

describe('BM25 of FTS5', () => {
  it('gives the published scores, by which a word in half of the texts is worth nothing', () => {
    const file = new Database(':memory:');
    file.exec('CREATE VIRTUAL TABLE texts USING fts5(text)');
    for (const text of TEXTS) file.prepare('INSERT INTO texts VALUES (?)').run(text);
    const score = (match: string) => file.prepare('SELECT rowid, bm25(texts) FROM texts WHERE texts MATCH ? ORDER BY 2, 1').raw().all(match);
    expect(score('picture OR sound')[0]).toEqual([1, expect.closeTo(-0.606885459069, 12)]);
    expect(score('power')).toEqual([2, 6].map((row) => [row, expect.closeTo(-0.552983507112, 12)]));
    expect(score('sound')[0]).toEqual([1, expect.closeTo(-1.032491e-6, 11)]);
  });
});

describe('createSqliteEngine', () => {
  it('still weighs a word that stands in half of the cases: each case brings an empty row along', async () => {
    const engine = sqliteEngine();
    await fill(engine, TEXTS.map((text, at) => bare(at + 1, text)));
    const { hits } = await engine.search(query({ text: '"sound"' }));
    // Twelve rows, three with the word; the mean length is half of what it was. A word of the narrative counts 1.5-fold.
    const idf = inverseDocumentFrequency(12, 3);
    const expected = (length: number) => bm25(1.5, idf, { length, meanLength: 26 / 12 });
    expect(hits.map((hit) => hit.score)).toEqual([expected(4), expected(4), expected(5)].map((score) => expect.closeTo(score, 12)));
    expect(idf).toBeGreaterThan(0.9);
  });

  it('makes a damaged index file anew instead of failing', async () => {
    const path = join(temporaryFolder(), 'index');
    writeFileSync(path, 'this is no database, but long enough to be taken for one '.repeat(40));
    const engine = sqliteEngine(path);
    expect(await engine.state()).toBeNull();
    await fill(engine, [bare(1, 'whole again')]);
    expect((await engine.search(query({ text: 'whole' }))).total).toBe(1);
  });
});
