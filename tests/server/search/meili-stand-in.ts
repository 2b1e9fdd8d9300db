import { createServer, type IncomingMessage, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';

type Document = Record<string, unknown> & { id: string };
type Index = { settings: Record<string, unknown>; documents: Map<string, Document> };
type Task = { uid: number; status: 'enqueued' | 'succeeded' | 'failed'; error: { message: string } | null };

/** A small server that keeps to the part of Meilisearch's HTTP contract that the engine uses. */
export type StandIn = {
  url: string;
  /** What was asked, as "METHOD path", oldest first. */
  asked: string[];
  /** Bodies of the searches. */
  searches: Record<string, unknown>[];
  indexes: Map<string, Index>;
  /** What happens to every request: null answers it. */
  trouble: 'refuse' | 'hang' | 'fail-tasks' | null;
  close: () => Promise<void>;
  /** Answers again on the same port. */
  reopen: () => Promise<void>;
};

export const STAND_IN_KEY = 'stand-in-key';

/** Settings of the server's API reference that an index may be given here; any other is refused, as there. */
const SETTINGS = new Set(
  'searchableAttributes filterableAttributes sortableAttributes rankingRules stopWords synonyms typoTolerance pagination faceting displayedAttributes'.split(' '),
);
const TASK_MS = 5;

class Refusal extends Error {
  constructor(
    readonly status: number,
    readonly code: string,
  ) {
    super(code);
  }
}

export async function startStandIn(): Promise<StandIn> {
  const tasks: Task[] = [];
  const indexes = new Map<string, Index>();
  let queue = Promise.resolve();
  const known = (uid: string) => {
    const index = indexes.get(uid);
    if (index === undefined) throw new Refusal(404, 'index_not_found');
    return index;
  };
  const made = (uid: string) => {
    const index = indexes.get(uid) ?? { settings: {}, documents: new Map() };
    indexes.set(uid, index);
    return index;
  };
  /** Tasks are done one after the other, a while after they were asked for. */
  const enqueue = (work: () => void) => {
    const task: Task = { uid: tasks.length, status: 'enqueued', error: null };
    tasks.push(task);
    queue = queue.then(async () => {
      await new Promise((resolve) => setTimeout(resolve, TASK_MS));
      try {
        if (standIn.trouble === 'fail-tasks') throw new Error('out of space');
        work();
        task.status = 'succeeded';
      } catch (error) {
        task.status = 'failed';
        task.error = { message: String(error) };
      }
    });
    return { status: 202, body: { taskUid: task.uid, indexUid: null, status: 'enqueued', type: 'any', enqueuedAt: new Date(0).toISOString() } };
  };
  const put = (uid: string, documents: Document[]) => enqueue(() => documents.forEach((d) => made(uid).documents.set(d.id, d)));
  const swap = ([a, b]: string[]) =>
    enqueue(() => {
      const [first, second] = [known(String(a)), known(String(b))];
      indexes.set(String(a), second);
      indexes.set(String(b), first);
    });

  const answer = (method: string, path: string, body: unknown): { status: number; body: unknown } => {
    const [, area, uid = '', what, id] = path.split('/');
    if (area === 'tasks') return { status: 200, body: tasks[Number(uid)] };
    if (area === 'multi-search') return { status: 200, body: { results: (body as { queries: Query[] }).queries.map((q) => find(known(q.indexUid), q)) } };
    if (area === 'swap-indexes') return swap((body as { indexes: string[] }[])[0]?.indexes ?? []);
    if (area !== 'indexes') throw new Refusal(404, 'not_found');
    if (uid === '') return enqueue(() => void made((body as { uid: string }).uid));
    if (what === undefined && method === 'DELETE') return enqueue(() => void (known(uid) && indexes.delete(uid)));
    if (what === undefined) return { status: 200, body: known(uid) && { uid, primaryKey: 'id' } };
    if (what === 'settings') {
      const strange = Object.keys(body as object).find((name) => !SETTINGS.has(name));
      if (strange !== undefined) throw new Refusal(400, 'bad_request');
      return enqueue(() => Object.assign(made(uid).settings, body));
    }
    if (id === 'delete-batch') return enqueue(() => (body as string[]).forEach((gone) => made(uid).documents.delete(gone)));
    if (method === 'POST') return put(uid, body as Document[]);
    const document = known(uid).documents.get(String(id));
    if (document === undefined) throw new Refusal(404, 'document_not_found');
    return { status: 200, body: document };
  };

  const handle = async (request: IncomingMessage) => {
    const path = new URL(request.url ?? '/', 'http://stand-in').pathname;
    standIn.asked.push(`${request.method} ${path}`);
    if (request.headers.authorization !== `Bearer ${STAND_IN_KEY}`) throw new Refusal(403, 'invalid_api_key');
    const chunks: Buffer[] = [];
    for await (const chunk of request) chunks.push(chunk as Buffer);
    const text = Buffer.concat(chunks).toString();
    const body: unknown = text === '' ? null : JSON.parse(text);
    if (path === '/multi-search') standIn.searches.push(...(body as { queries: Record<string, unknown>[] }).queries);
    return answer(request.method ?? 'GET', path, body);
  };

  let server: Server;
  let port = 0;
  const open = () =>
    new Promise<void>((resolve) => {
      server = createServer((request, response) => {
        if (standIn.trouble === 'hang') return;
        handle(request)
          .catch((error: unknown) => {
            const { status, code } = error instanceof Refusal ? error : { status: 500, code: 'internal' };
            return { status, body: { message: String(error), code, type: 'invalid_request', link: '' } };
          })
          .then(({ status, body }) => {
            response.writeHead(status, { 'content-type': 'application/json' });
            response.end(JSON.stringify(body));
          });
      });
      server.listen(port, '127.0.0.1', () => {
        port = (server.address() as AddressInfo).port;
        resolve();
      });
    });
  const close = () =>
    new Promise<void>((resolve) => {
      server.closeAllConnections();
      server.close(() => resolve());
    });
  const standIn: StandIn = { url: '', asked: [], searches: [], indexes, trouble: null, close, reopen: open };
  await open();
  standIn.url = `http://127.0.0.1:${port}`;
  return standIn;
}

type Query = {
  indexUid: string;
  q: string;
  filter: string[][];
  sort?: string[];
  facets?: string[];
  offset?: number;
  limit?: number;
  page?: number;
  hitsPerPage?: number;
  highlightPreTag?: string;
  highlightPostTag?: string;
};

/** Every word has to begin a word of a searchable field: enough to see what the engine asks for and how it reads answers. */
function find({ settings, documents }: Index, query: Query) {
  const filterable = settings.filterableAttributes as string[];
  const sortable = settings.sortableAttributes as string[];
  const words = query.q.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
  const conditions = query.filter.map((any) => any.map((text) => /^(\w+) = (".*")$/.exec(text)));
  const passes = (document: Document) =>
    conditions.every((any) =>
      any.some((parts) => {
        const [, name = '', value = ''] = parts ?? [];
        if (!filterable.includes(name)) throw new Refusal(400, 'invalid_search_filter');
        return [document[name]].flat().includes(JSON.parse(value));
      }),
    );
  const text = (document: Document) => (settings.searchableAttributes as string[]).map((name) => document[name]).join(' ').toLowerCase();
  const found = [...documents.values()].filter((d) => passes(d) && words.every((w) => new RegExp(`(^|[^\\p{L}\\p{N}])${w}`, 'u').test(text(d))));
  for (const rule of ['id:asc', ...(query.sort ?? [])].reverse().sort((a) => (a.startsWith('id') ? -1 : 1))) {
    const [name = '', way] = rule.split(':');
    if (!sortable.includes(name)) throw new Refusal(400, 'invalid_search_sort');
    found.sort((a, b) => (String(a[name]) < String(b[name]) ? -1 : String(a[name]) > String(b[name]) ? 1 : 0) * (way === 'desc' ? -1 : 1));
  }
  const facetDistribution = Object.fromEntries((query.facets ?? []).map((name) => [name, countValues(found, name)]));
  const mark = (narrative: string) =>
    words.reduce((told, word) => told.replace(new RegExp(`\\b${word}\\w*`, 'giu'), (all) => `${query.highlightPreTag}${all}${query.highlightPostTag}`), narrative);
  const hits = (from: number, to: number) =>
    found.slice(from, to).map((d) => ({ id: d.id, month: d.month, _rankingScore: 0.5, _formatted: { narrative: mark(String(d.narrative)) } }));
  if (query.page !== undefined) return { hits: hits(0, query.hitsPerPage ?? 1), totalHits: found.length, facetDistribution };
  return { hits: hits(query.offset ?? 0, (query.offset ?? 0) + (query.limit ?? 20)), estimatedTotalHits: found.length };
}

function countValues(found: readonly Document[], name: string): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const value of found.flatMap((document) => [document[name]].flat().map(String))) counts[value] = (counts[value] ?? 0) + 1;
  return counts;
}
