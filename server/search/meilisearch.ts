import { Meilisearch, MeilisearchApiError, type EnqueuedTaskPromise, type IndexSwap, type MultiSearchResult } from 'meilisearch';
import { parseWords, wordsIn } from '../../shared/domain/search/parse-words';
import { readMarks } from '../../shared/domain/search/read-marks';
import { SEARCH_FIELDS, type SearchDocument } from '../../shared/domain/search/search-document';
import { FILTER_NAMES, type FilterName, type SearchFacets, type SearchQuery, type SearchResult } from '../../shared/schemas/search';
import { FILTER_FIELDS, indexSettings, synonymsOf } from './meili/index-settings';
import { countRequest, pageRequest, queryText, type Strategy } from './meili/search-requests';
import type { IndexChange, IndexState, SearchEngine } from './search-engine';
import { readCursor, writeCursor } from './search-cursor';

export type MeilisearchOptions = {
  url: string;
  apiKey: string;
  /** Beginning of the names of the indexes, so that sites and tests do not share them. */
  prefix?: string;
  /** How long a search may take, in milliseconds, before it counts as not answered. */
  searchTimeoutMs?: number;
  /** How long a task of the server may take, in milliseconds. */
  taskTimeoutMs?: number;
};

/** How many documents before the end of the last page are asked for again, to find where it ended. */
const OVERLAP = 20;
/** Where fewer cases than these have all the words, those with some of them are listed too. */
const FEW = 5;

type Indexes = { cases: string; next: string; state: string };

/**
 * The engine for sites that outgrow one machine: a Meilisearch server. Every write is awaited until the server has done
 * it. How far the index has followed the change feed is a document of an index of its own on the same server.
 */
export function createMeilisearchEngine({ url, apiKey, prefix = 'second-bench', searchTimeoutMs = 1_500, taskTimeoutMs = 120_000 }: MeilisearchOptions): SearchEngine {
  const asking = new Meilisearch({ host: url, apiKey, timeout: searchTimeoutMs });
  const writing = new Meilisearch({ host: url, apiKey, timeout: 30_000, defaultWaitOptions: { timeout: taskTimeoutMs, interval: 20 } });
  const names: Indexes = { cases: `${prefix}-cases`, next: `${prefix}-cases-next`, state: `${prefix}-state` };
  return {
    name: 'meilisearch',
    search: (query) => search(asking, names, query),
    state: () => readState(writing, names),
    apply: (change, from, to) => apply(writing, names, { change, from, to }),
    rebuild: (batches, state) => rebuild(writing, names, batches, state),
    close: async () => {},
  };
}

type Found = MultiSearchResult<SearchDocument>;

async function search(client: Meilisearch, names: Indexes, query: SearchQuery): Promise<SearchResult> {
  const terms = parseWords(query.text);
  const q = queryText(terms);
  const strict = await ask(client, names, query, { q, matchingStrategy: 'all' });
  const isFew = totalOf(strict.counts) < FEW && terms.filter((term) => !term.not).length > 1;
  const { page, counts, facets, cursor } = isFew ? await ask(client, names, query, { q, matchingStrategy: 'frequency' }) : strict;
  // The page begins after the case that the last one ended with, wherever that stands now.
  const before = cursor === null ? -1 : page.hits.findIndex((hit) => hit.id === cursor.id);
  const start = cursor === null ? 0 : before >= 0 ? before + 1 : Math.min(cursor.seen, OVERLAP);
  const rest = page.hits.slice(start);
  const hits = rest.slice(0, query.take);
  const last = hits.at(-1);
  const seen = (cursor?.seen ?? 0) + hits.length;
  return {
    engine: 'meilisearch',
    total: totalOf(counts),
    hits: hits.map((hit) => ({ id: hit.id, score: q === '' ? 0 : (hit._rankingScore ?? 0), ...readMarks(hit._formatted?.narrative ?? '') })),
    facets,
    matched: isFew ? 'some' : 'all',
    corrections: [],
    unknown: [],
    next: last !== undefined && rest.length > query.take ? writeCursor({ key: last.month, id: last.id, seen }) : null,
  };
}

/** One round trip: the page, the counts, and for each filter in use the counts without it. */
async function ask(client: Meilisearch, names: Indexes, query: SearchQuery, words: { q: string; matchingStrategy: Strategy }) {
  const asked = { indexUid: names.cases, ...words };
  const cursor = readCursor(query.cursor);
  const offset = Math.max(0, (cursor?.seen ?? 0) - OVERLAP);
  const limit = (cursor?.seen ?? 0) - offset + OVERLAP + query.take + 1;
  const inUse = FILTER_NAMES.filter((name) => (query.filters[name]?.length ?? 0) > 0);
  const { results } = await client.multiSearch({
    queries: [
      pageRequest(asked, query, { offset, limit }),
      countRequest(asked, query.filters, query.facets ? FILTER_NAMES : []),
      ...(query.facets ? inUse.map((name) => countRequest(asked, query.filters, [name], name)) : []),
    ],
  });
  const [page, counts, ...without] = results as Found[];
  if (page === undefined || counts === undefined) throw new Error('The search server left out an answer.');
  const facets = query.facets ? facetsOf(counts, new Map(inUse.map((name, at) => [name, without[at]]))) : null;
  return { page, counts, facets, cursor };
}

function totalOf(counts: Found): number {
  return 'totalHits' in counts ? Number(counts.totalHits) : 0;
}

function facetsOf(counts: Found, without: ReadonlyMap<FilterName, Found | undefined>): SearchFacets {
  return Object.fromEntries(
    FILTER_NAMES.map((name) => [name, (without.get(name) ?? counts).facetDistribution?.[FILTER_FIELDS[name]] ?? {}]),
  ) as SearchFacets;
}

const STATE_ID = 'cases';

async function readState(client: Meilisearch, names: Indexes): Promise<IndexState | null> {
  try {
    const { cursor, cursorCase, fingerprint } = await client.index<IndexState>(names.state).getDocument(STATE_ID);
    return { cursor, cursorCase, fingerprint };
  } catch (error) {
    if (error instanceof MeilisearchApiError && error.response.status === 404) return null;
    throw error;
  }
}

async function writeState(client: Meilisearch, names: Indexes, state: IndexState): Promise<void> {
  await done(client.index(names.state).addDocuments([{ id: STATE_ID, ...state }], { primaryKey: 'id' }));
}

type Application = { change: IndexChange; from: IndexState; to: IndexState };

async function apply(client: Meilisearch, names: Indexes, { change: { put, remove }, from, to }: Application): Promise<boolean> {
  const now = await readState(client, names);
  if (now === null || now.cursor !== from.cursor || now.cursorCase !== from.cursorCase || now.fingerprint !== from.fingerprint) return false;
  const cases = client.index<SearchDocument>(names.cases);
  if (put.length > 0) await done(cases.addDocuments([...put], { primaryKey: 'id' }));
  if (remove.length > 0) await done(cases.deleteDocuments([...remove]));
  await writeState(client, names, to);
  return true;
}

/** Fills a second index and has the server exchange the two in one step. */
async function rebuild(client: Meilisearch, names: Indexes, batches: AsyncIterable<readonly SearchDocument[]>, state: IndexState): Promise<void> {
  await client.deleteIndexIfExists(names.next);
  await done(client.createIndex(names.next, { primaryKey: 'id' }));
  const next = client.index<SearchDocument>(names.next);
  const words = new Set<string>();
  for await (const batch of batches) {
    for (const document of batch) for (const field of SEARCH_FIELDS) for (const word of allWords(document[field])) words.add(word);
    await done(next.addDocuments([...batch], { primaryKey: 'id' }));
  }
  await done(next.updateSettings(indexSettings(synonymsOf(words))));
  if (!(await exists(client, names.cases))) await done(client.createIndex(names.cases, { primaryKey: 'id' }));
  await done(client.swapIndexes([{ indexes: [names.cases, names.next] } as IndexSwap]));
  await writeState(client, names, state);
  await done(client.deleteIndex(names.next));
}

function allWords(text: string): string[] {
  return text.split('\n').flatMap((line) => wordsIn(line));
}

async function exists(client: Meilisearch, uid: string): Promise<boolean> {
  try {
    await client.getRawIndex(uid);
    return true;
  } catch (error) {
    if (error instanceof MeilisearchApiError && error.response.status === 404) return false;
    throw error;
  }
}

/** Waits until the server has carried out a task; throws what it says where it has not. */
async function done(task: EnqueuedTaskPromise): Promise<void> {
  const { status, error } = await task.waitTask();
  if (status !== 'succeeded') throw new Error(`The search server did not carry out a task (${status}): ${error?.message ?? 'no reason given'}`);
}
