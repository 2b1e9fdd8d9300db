import { describe, expect, it, onTestFinished } from 'vitest';
import { createCaseSearch } from '../../../server/search/case-search';
import { appendCaseChanges } from '../../../server/repositories/case-change-repository';
import { createMeilisearchEngine } from '../../../server/search/meilisearch';
import { testDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { plainCase } from '../fixtures/plain-case';
import { contractDocuments, idOf } from './contract/contract-cases';
import { STAND_IN_KEY, startStandIn, type StandIn } from './meili-stand-in';
import { batchesOf, fill, query, sqliteEngine } from './small-index';

async function standIn(): Promise<StandIn> {
  const server = await startStandIn();
  onTestFinished(server.close);
  return server;
}

const engineOf = (server: StandIn, apiKey = STAND_IN_KEY) =>
  createMeilisearchEngine({ url: server.url, apiKey, searchTimeoutMs: 300, taskTimeoutMs: 5_000 });

describe('createMeilisearchEngine, over HTTP', () => {
  it('makes an index in batches beside the old one, with its settings, and has the two exchanged', async () => {
    const server = await standIn();
    const engine = engineOf(server);
    expect(await engine.state()).toBeNull();
    await engine.rebuild(batchesOf(contractDocuments, 6), { cursor: 3, cursorCase: idOf('a'), fingerprint: 'f' });
    expect(await engine.state()).toEqual({ cursor: 3, cursorCase: idOf('a'), fingerprint: 'f' });
    const index = server.indexes.get('second-bench-cases');
    expect(index?.documents.size).toBe(16);
    expect([...server.indexes.keys()].sort()).toEqual(['second-bench-cases', 'second-bench-state']);
    const order = server.asked.filter((line) => !line.startsWith('GET'));
    expect(order.filter((line) => line === 'POST /indexes/second-bench-cases-next/documents')).toHaveLength(3);
    expect(order.indexOf('POST /swap-indexes')).toBeGreaterThan(order.indexOf('PATCH /indexes/second-bench-cases-next/settings'));
    const { searchableAttributes, rankingRules, synonyms, filterableAttributes } = (index?.settings ?? {}) as { searchableAttributes: string[]; rankingRules: string[]; synonyms: Record<string, string[]>; filterableAttributes: string[] };
    expect(searchableAttributes).toEqual(['symptoms', 'causes', 'device', 'steps', 'narrative', 'synonyms']);
    expect(rankingRules.at(0)).toBe('sort');
    expect(rankingRules.at(-1)).toBe('id:asc');
    expect(filterableAttributes).toContain('photos');
    expect(synonyms.xtal).toContain('crystal');
    expect(synonyms.discs).toContain('disc');
  });

  it('asks for a page, exact counts, and the counts without each filter in use, in one request', async () => {
    const server = await standIn();
    const engine = engineOf(server);
    await fill(engine, contractDocuments);
    const result = await engine.search(query({ text: 'alcohol -lens "the slot"', filters: { device: ['ormadic-duo', 'bramfield-halo'] } }));
    expect(server.asked.filter((line) => line === 'POST /multi-search').length).toBeLessThanOrEqual(2);
    const [page, counts, without] = server.searches;
    expect(page).toMatchObject({
      q: 'alcohol -"lens" "the slot"',
      matchingStrategy: 'all',
      filter: [['deviceSlugs = "ormadic-duo"', 'deviceSlugs = "bramfield-halo"']],
      offset: 0,
    });
    expect(counts).toMatchObject({ page: 1, hitsPerPage: 1 });
    expect(without).toMatchObject({ filter: [], facets: ['deviceSlugs'] });
    expect(result.engine).toBe('meilisearch');
  });

  it('pages, sorts, counts and shows what matched', async () => {
    const server = await standIn();
    const engine = engineOf(server);
    await fill(engine, contractDocuments);
    const first = await engine.search(query({ sort: 'newest', take: 5 }));
    expect(first.total).toBe(16);
    expect(first.hits.map((hit) => hit.id[0]).join('')).toBe('kjped');
    const second = await engine.search(query({ sort: 'newest', take: 5, cursor: first.next }));
    expect(second.hits.map((hit) => hit.id[0]).join('')).toBe('lmban');
    const [hit] = (await engine.search(query({ text: 'membrane' }))).hits;
    expect(hit?.highlights.map(([start, end]) => hit.snippet.slice(start, end))).toEqual(['membrane']);
    expect((await engine.search(query({ filters: { category: ['handheld'] } }))).facets?.category).toMatchObject({ console: 5, handheld: 1 });
  });

  it('goes on after the case that the last page ended with, though cases have come before it', async () => {
    const server = await standIn();
    const engine = engineOf(server);
    await fill(engine, contractDocuments);
    const first = await engine.search(query({ sort: 'newest', take: 3 }));
    const newer = contractDocuments.slice(0, 2).map((d, at) => ({ ...d, id: `y${at}`.padEnd(16, 'y'), month: '2026-01' }));
    const state = await engine.state();
    if (state === null) throw new Error('There is no index.');
    await engine.apply({ put: newer, remove: [] }, state, { ...state, cursor: 1 });
    const second = await engine.search(query({ sort: 'newest', take: 3, cursor: first.next }));
    expect(second.hits.map((hit) => hit.id[0]).join('')).toBe('edl');
  });

  it('says what went wrong where a task failed, and where the key is wrong', async () => {
    const server = await standIn();
    await fill(engineOf(server), contractDocuments);
    const state = { cursor: 0, cursorCase: null, fingerprint: 'small' };
    server.trouble = 'fail-tasks';
    await expect(engineOf(server).apply({ put: [], remove: ['x'] }, state, state)).rejects.toThrow(/did not carry out a task.*out of space/);
    server.trouble = null;
    await expect(engineOf(server, 'wrong').search(query({}))).rejects.toThrow(/invalid_api_key/);
  });
});

describe('createCaseSearch with a search server', () => {
  it('answers from SQLite while the server is away and says so; what changed meanwhile reaches the server later', async () => {
    const server = await standIn();
    const { db } = testDatabase();
    await fillDatabase(db, [plainCase(1, { narrative: 'humming coil' })]);
    let clock = 0;
    const troubles: unknown[] = [];
    const search = createCaseSearch({
      db,
      local: sqliteEngine(),
      remote: engineOf(server),
      now: () => clock,
      onTrouble: (error) => troubles.push(error),
    });
    await search.catchUp();
    expect(await search.search(query({ text: 'humming' }))).toMatchObject({ engine: 'meilisearch', fellBack: false, total: 1 });

    await server.close();
    await db.$transaction(async (tx) => {
      await tx.caseFile.update({ where: { id: plainCase(1).id }, data: { narrative: 'whistling coil' } });
      await appendCaseChanges(tx, [plainCase(1).id]);
    });
    await search.catchUp();
    expect(await search.search(query({ text: 'whistling' }))).toMatchObject({ engine: 'sqlite', fellBack: true, total: 1 });
    expect(troubles).toHaveLength(1);

    await server.reopen();
    clock += 60_000;
    await search.catchUp();
    expect(await search.search(query({ text: 'whistling' }))).toMatchObject({ engine: 'meilisearch', fellBack: false, total: 1 });
    expect((await search.search(query({ text: 'humming' }))).total).toBe(0);
  });

  it('does not wait for a server that hangs', async () => {
    const server = await standIn();
    const { db } = testDatabase();
    await fillDatabase(db, [plainCase(1, { narrative: 'humming coil' })]);
    const search = createCaseSearch({ db, local: sqliteEngine(), remote: engineOf(server), now: () => 0, onTrouble: () => {} });
    await search.catchUp();
    server.trouble = 'hang';
    expect(await search.search(query({ text: 'humming' }))).toMatchObject({ engine: 'sqlite', fellBack: true, total: 1 });
    const asked = server.asked.length;
    await search.search(query({ text: 'humming' }));
    expect(server.asked.length).toBe(asked);
  });
});
