import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { readMarks } from '../../../shared/domain/search/read-marks';
import { SEARCH_FIELDS } from '../../../shared/domain/search/search-document';
import { snippetOf } from '../../../server/search/sqlite/mark-page';
import { plainCase } from '../fixtures/plain-case';
import { fill, query, smallDocument, sqliteEngine, temporaryFolder } from './small-index';

const PADDING = 'the unit came in with a cracked shell and was cleaned before anything else was tried on it by us';

/** Texts with the words near their beginning, far from it, several times, one of them only, or beside a word that is left out. */
const TEXTS = Array.from({ length: 40 }, (_, i) => {
  const words = ['humming coil', 'coil that hums', 'coil', 'humming coil and rusty screws'][i % 4] as string;
  return [...Array.from({ length: i % 5 }, () => PADDING), words, PADDING, i % 3 === 0 ? words : '', PADDING].join(' ');
});

describe('snippets', () => {
  // What one statement over all that is found gives, be the rows asked for one by one, all at once or in a full text of their own.
  it.each([
    ['coil humming ', '"coil" AND "humming"'],
    ['coil humming -rusty ', '("coil" AND "humming") NOT ("rusty")'],
    ['"coil"', '"coil"'],
    ['hummi', '"hummi" * OR "humming"'],
  ])('of "%s" are the ones of a walk over all that is found', async (text, match) => {
    const path = join(temporaryFolder(), 'index');
    const engine = sqliteEngine(path);
    await fill(engine, TEXTS.map((narrative, i) => ({ ...smallDocument(plainCase(i + 1)), narrative })));
    const file = new Database(path, { readonly: true });
    const column = SEARCH_FIELDS.indexOf('narrative');
    const walked = file
      .prepare(`SELECT case_doc.id, ${snippetOf('case_text', column)} FROM case_text JOIN case_doc ON doc = case_text.rowid WHERE case_text MATCH ?`)
      .raw()
      .all(match) as [string, string][];
    file.close();
    const expected = new Map(walked.map(([id, marked]) => [id, readMarks(marked)]));
    const { hits, total } = await engine.search(query({ text, take: 50 }));
    expect(total).toBe(walked.length);
    for (const { id, snippet, highlights } of hits) expect({ snippet, highlights }).toEqual(expected.get(id));
    expect(hits.some(({ highlights }) => highlights.length > 1)).toBe(true);
  });
});
