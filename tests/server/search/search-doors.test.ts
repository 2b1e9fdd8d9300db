import { describe, expect, it } from 'vitest';
import type { PrismaClient } from '../../../prisma/generated/client';
import { loadCasebook } from '../../../server/casebook/load-casebook';
import { runProgram } from '../../../server/cli/program';
import { randomCaseId } from '../../../server/ids';
import { createCaseSearch } from '../../../server/search/case-search';
import { createCaller } from '../../../server/trpc/root';
import type { CaseRecord } from '../../../shared/schemas/case';
import { testDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { plainCase } from '../fixtures/plain-case';
import { smallCases } from '../fixtures/small-cases';
import { ownPage } from '../trpc/test-request';
import { sqliteEngine } from './small-index';

async function opened(cases: readonly CaseRecord[]) {
  const { db } = testDatabase();
  await fillDatabase(db, cases);
  const search = createCaseSearch({ db, local: sqliteEngine(), remote: null, now: Date.now, onTrouble: () => {} });
  return { db, search };
}

async function run(db: PrismaClient, search: ReturnType<typeof createCaseSearch>, args: readonly string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const io = {
    db: () => db,
    search: () => search,
    out: (text: string) => void out.push(text),
    err: (text: string) => void err.push(text),
    now: () => new Date('2026-01-02T03:04:05Z'),
    newId: randomCaseId,
    readSecret: async () => '',
    actor: 'test',
  };
  return { code: await runProgram(io as never, args), out: out.join(''), err: err.join('') };
}

const CASES = [
  plainCase(1, { narrative: 'humming coil', month: '2024-02' }),
  plainCase(2, { narrative: 'humming relay', device: 'ormadic-duo' }),
  { ...plainCase(3, { narrative: 'humming, but not yet reviewed' }), status: 'submitted' as const },
];

describe('search.cases', () => {
  it('gives published cases with the words to show them', async () => {
    const { db, search } = await opened(CASES);
    const casebook = loadCasebook(db);
    const caller = createCaller({ ...ownPage, db, casebook: () => casebook, search: () => search });
    const found = await caller.search.cases({ text: 'huming', filters: { category: ['home-computer'] } });
    expect(found).toMatchObject({ engine: 'sqlite', fellBack: false, total: 1, corrections: [{ typed: 'huming', meant: 'humming' }] });
    expect(found.hits[0]).toMatchObject({ id: plainCase(1).id, snippet: 'humming coil', item: { symptoms: ['Grey screen'], month: '2024-02' } });
    expect(found.facets?.category).toEqual({ 'home-computer': 1, console: 1 });
    const suggested = await caller.search.suggest({ text: 'humming' });
    expect(suggested.groups.find((group) => group.kind === 'case')?.items.map((item) => item.href).sort()).toEqual(
      [`/cases/${plainCase(1).id}`, `/cases/${plainCase(2).id}`],
    );
  });

  it('shows a case that the casebook in memory does not have yet', async () => {
    const { db, search } = await opened([]);
    const casebook = loadCasebook(db);
    await casebook;
    const caller = createCaller({ ...ownPage, db, casebook: () => casebook, search: () => search });
    const { insertCases } = await import('../../../server/repositories/insert-cases');
    await db.$transaction((tx) => insertCases(tx, CASES, { newId: randomCaseId }));
    expect((await caller.search.cases({ text: 'relay' })).hits[0]?.item.device.label).toBe('Ormadic Duo');
  });

  it('refuses a filter that there is not, and cuts a text that is too long', async () => {
    const { db, search } = await opened(CASES);
    const casebook = loadCasebook(db);
    const caller = createCaller({ ...ownPage, db, casebook: () => casebook, search: () => search });
    await expect(caller.search.cases({ filters: { year: ['soon'] } })).rejects.toMatchObject({ code: 'BAD_REQUEST' });
    expect((await caller.search.cases({ text: `relay ${'x '.repeat(6_000)}` })).hits[0]?.id).toBe(plainCase(2).id);
  });
});

describe('cli search, reindex and evaluate-search', () => {
  it('print what was asked for', async () => {
    const { db, search } = await opened(CASES);
    const found = await run(db, search, ['search', 'humming', '--filter', 'device=ormadic-duo', '--json']);
    expect(found.code).toBe(0);
    expect(JSON.parse(found.out)).toMatchObject({ engine: 'sqlite', total: 1, hits: [{ id: plainCase(2).id, snippet: 'humming relay' }] });
    expect((await run(db, search, ['search', 'x', '--filter', 'colour=red'])).err).toMatch(/There is no filter "colour"/);
    expect((await run(db, search, ['reindex'])).out).toMatch(/The sqlite index holds 2 cases/);
    expect((await run(db, search, ['reindex', '--engine', 'meilisearch'])).err).toMatch(/set MEILISEARCH_URL and MEILISEARCH_API_KEY/);
  });

  it('measures on held-out cases, baselines beside it, and refuses a casebook that is too small', async () => {
    const { db, search } = await opened(smallCases(300));
    const { out } = await run(db, search, ['evaluate-search', '--json']);
    const result = JSON.parse(out);
    expect(result).toMatchObject({ searched: 240, folds: 5 });
    const { results } = result.cuts[2];
    expect(results.map((r: { ranker: string }) => r.ranker)).toEqual(['weighted findings', 'text relevance', 'unweighted overlap', 'Jaccard']);
    for (const r of results) {
      expect(r.hit1).toBeLessThanOrEqual(r.hit3);
      expect(r.hit3).toBeLessThanOrEqual(r.hit10);
      expect(r.mrr).toBeGreaterThanOrEqual(r.hit1);
      expect(r.ndcg10).toBeLessThanOrEqual(1);
    }
    // Four causes that differ plainly in what they show: whatever weighs the findings finds one of them at once.
    expect(results[0].ndcg10).toBeGreaterThan(results[2].ndcg10);
    const few = await opened(CASES);
    expect((await run(few.db, few.search, ['evaluate-search'])).code).toBe(1);
  });
});
