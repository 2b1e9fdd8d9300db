import { rmSync } from 'node:fs';
import { join } from 'node:path';
import MiniSearch from 'minisearch';
import { createSqliteEngine } from '../../../server/search/sqlite-fts';
import type { SearchDocument } from '../../../shared/domain/search/search-document';
import { searchDocument } from '../../../shared/domain/search/search-document';
import { vocabularyWords } from '../../../shared/domain/casebook/vocabulary-words';
import { searchQuerySchema } from '../../../shared/schemas/search';
import { quantile, type Row, timesOf, timesText } from '../run/measure';
import { drawCases, drawNarrative, randomOf } from '../world/draw';
import { generatedCatalogue, generatedVocabulary } from '../world/words';
import { fullText, threeWords } from './look-up';

const TEXT_SEED = 32;

async function* documents(count: number): AsyncGenerator<SearchDocument[]> {
  const words = vocabularyWords(generatedVocabulary(), generatedCatalogue());
  const random = randomOf(TEXT_SEED);
  let batch: SearchDocument[] = [];
  for (const record of drawCases(5, count)) {
    const content = { ...record.content, narrative: drawNarrative(random, 120) };
    batch.push(searchDocument(words, { ...record, content }, false));
    if (batch.length === 500) {
      yield batch;
      batch = [];
    }
  }
  if (batch.length > 0) yield batch;
}

/** The site's own engine beside raw full text and beside MiniSearch, over the same texts. */
export async function searchRows(folder: string, count: number, onProgress: (what: string) => void): Promise<Row[]> {
  const path = join(folder, 'benchmark-search.db');
  rmSync(path, { force: true });
  onProgress('filling the index of the site');
  const engine = createSqliteEngine(path);
  await engine.rebuild(documents(count), { cursor: 0, cursorCase: null, fingerprint: 'benchmark' });
  onProgress('filling the raw table');
  const { db } = fullText(count);
  onProgress('filling MiniSearch');
  const mini = new MiniSearch({ fields: ['narrative'] });
  const random = randomOf(TEXT_SEED);
  for (let id = 1; id <= count; id += 1) mini.add({ id, narrative: drawNarrative(random, 120) });
  const raw = db.prepare("SELECT rowid, snippet(text, 0, '', '', '…', 28) FROM text WHERE text MATCH ? ORDER BY rank LIMIT 20");
  const times = { ours: [] as number[], raw: [] as number[], mini: [] as number[] };
  for (const text of threeWords(60)) {
    const query = searchQuerySchema.parse({ text });
    let start = performance.now();
    await engine.search(query);
    times.ours.push(performance.now() - start);
    start = performance.now();
    raw.all(text);
    times.raw.push(performance.now() - start);
    start = performance.now();
    mini.search(text, { combineWith: 'AND' }).slice(0, 20);
    times.mini.push(performance.now() - start);
  }
  await engine.close();
  db.close();
  rmSync(path, { force: true });
  const warm = (list: number[]) => list.slice(8);
  const share = (against: number[]) => quantile(warm(times.ours).map((ms, i) => ms / (warm(against)[i] as number)), 0.5);
  const work = `text search, ${count / 1000}k narratives of 120 words, three words`;
  const row = (id: string, alternative: string, against: number[], asked: string, atMost: number | null): Row => ({
    id,
    work,
    alternative,
    asked,
    ours: timesText(timesOf(warm(times.ours))),
    theirs: timesText(timesOf(warm(against))),
    ratio: share(against),
    ratioText: `${share(against).toFixed(2)} times its time`,
    met: atMost === null ? null : share(against) <= atMost,
    note: 'ours with stemming, spellings, corrections, the number of cases found and the counts of every filter',
  });
  return [
    row('search-raw', 'raw FTS5 `ORDER BY rank LIMIT 20`, with snippets', times.raw, 'at most 1.5 times its time', 1.5),
    row('search-mini', 'MiniSearch', times.mini, '(no target of its own)', null),
  ];
}
