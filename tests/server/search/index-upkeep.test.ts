import Database from 'better-sqlite3';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createCaseSearch } from '../../../server/search/case-search';
import { readDocumentSource } from '../../../server/search/document-source';
import { catchUpIndex, rebuildIndex } from '../../../server/search/index-upkeep';
import { appendCaseChanges } from '../../../server/repositories/case-change-repository';
import type { PrismaClient } from '../../../prisma/generated/client';
import { createSqliteEngine } from '../../../server/search/sqlite-fts';
import type { SearchEngine } from '../../../server/search/search-engine';
import type { CaseStatus } from '../../../shared/schemas/case';
import { testDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { plainCase } from '../fixtures/plain-case';
import { smallCases } from '../fixtures/small-cases';
import { query, sqliteEngine } from './small-index';

/** What is done to a published case, with its entry in the feed, as whoever reviews cases does it. */
async function change(db: PrismaClient, id: string, data: { status?: CaseStatus; narrative?: string; outcome?: string }): Promise<void> {
  await db.$transaction(async (tx) => {
    await tx.caseFile.update({ where: { id }, data });
    await appendCaseChanges(tx, [id]);
  });
}

const QUESTIONS = ['', 'grey', 'cured unit', 'crystal -grey', '"old part"', 'soaked xtal', 'lef'];

async function everythingIn(engine: SearchEngine) {
  const answers = [];
  for (const text of QUESTIONS) answers.push(await engine.search(query({ text, take: 100 })));
  return answers;
}

describe('catchUpIndex', () => {
  it('makes the index where there is none, then takes in only what has changed', async () => {
    const { db } = testDatabase();
    await fillDatabase(db, [plainCase(1, { narrative: 'first words' }), plainCase(2, { narrative: 'second words' })]);
    const engine = sqliteEngine();
    const source = await readDocumentSource(db);
    await catchUpIndex({ db, engine, source });
    expect((await engine.search(query({ text: 'words' }))).total).toBe(2);
    await change(db, plainCase(1).id, { narrative: 'other phrases' });
    await change(db, plainCase(2).id, { status: 'retracted' });
    const notAnew = async () => {
      throw new Error('The index was made anew for two changes.');
    };
    await catchUpIndex({ db, engine: { ...engine, rebuild: notAnew }, source });
    expect((await engine.search(query({ text: 'words' }))).total).toBe(0);
    expect((await engine.search(query({ text: 'phrases' }))).hits[0]?.id).toBe(plainCase(1).id);
  });

  it('makes it anew for another vocabulary and for another database', async () => {
    const { db } = testDatabase();
    await fillDatabase(db, [plainCase(1)]);
    const engine = sqliteEngine();
    const source = await readDocumentSource(db);
    const otherWords = { ...source, fingerprint: 'other words' };
    await catchUpIndex({ db, engine, source });
    await catchUpIndex({ db, engine, source: otherWords });
    expect((await engine.state())?.fingerprint).toBe('other words');
    const other = testDatabase();
    await fillDatabase(other.db, [plainCase(7, { narrative: 'elsewhere' })]);
    await catchUpIndex({ db: other.db, engine, source: otherWords });
    expect((await engine.search(query({}))).hits.map((hit) => hit.id)).toEqual([plainCase(7).id]);
  });

  it('leaves the same index as a rebuild, whatever happened to the cases and whenever it looked', async () => {
    const cases = smallCases(12);
    const status = fc.constantFrom<CaseStatus>('accepted', 'retracted', 'withdrawn');
    const act = fc.oneof(
      fc.record({ kind: fc.constant('change' as const), at: fc.nat(11), status, narrative: fc.constantFrom('grey xtal soaked', 'the old part', '') }),
      fc.record({ kind: fc.constant('look' as const) }),
    );
    await fc.assert(
      fc.asyncProperty(fc.array(act, { minLength: 1, maxLength: 14 }), async (acts) => {
        const { db } = testDatabase();
        await fillDatabase(db, cases);
        const source = await readDocumentSource(db);
        const followed = sqliteEngine();
        for (const step of acts) {
          if (step.kind === 'look') {
            await catchUpIndex({ db, engine: followed, source });
            // What is kept in memory for searches has to follow, too.
            await everythingIn(followed);
          } else await change(db, cases[step.at]?.id as string, { status: step.status, narrative: step.narrative });
        }
        await catchUpIndex({ db, engine: followed, source });
        const rebuilt = sqliteEngine();
        await rebuildIndex({ db, engine: rebuilt, source });
        expect(await followed.state()).toEqual(await rebuilt.state());
        expect(await everythingIn(followed)).toEqual(await everythingIn(rebuilt));
      }),
      { numRuns: 12 },
    );
  });
});

describe('createCaseSearch', () => {
  it('shows what another program has changed at the very next search', async () => {
    const { db } = testDatabase();
    await fillDatabase(db, [plainCase(1, { narrative: 'humming coil' })]);
    const search = createCaseSearch({ db, local: sqliteEngine(), remote: null, now: Date.now, onTrouble: () => {} });
    expect((await search.search(query({ text: 'humming' }))).total).toBe(1);
    await change(db, plainCase(1).id, { status: 'retracted' });
    expect((await search.search(query({ text: 'humming' }))).total).toBe(0);
    await change(db, plainCase(1).id, { status: 'accepted', narrative: 'whistling coil' });
    expect((await search.search(query({ text: 'whistling' }))).total).toBe(1);
  });

  it('goes on with the index as it is while another program writes it, and shows the change afterwards', async () => {
    const { db, url } = testDatabase();
    await fillDatabase(db, [plainCase(1, { narrative: 'humming coil' })]);
    const path = `${url.slice('file:'.length)}-search`;
    const search = createCaseSearch({ db, local: createSqliteEngine(path), remote: null, now: Date.now, onTrouble: () => {} });
    expect((await search.search(query({ text: 'humming' }))).total).toBe(1);
    const other = new Database(path);
    other.exec('BEGIN IMMEDIATE');
    await change(db, plainCase(1).id, { narrative: 'whistling coil' });
    expect((await search.search(query({ text: 'humming' }))).total).toBe(1);
    // Making it anew waits for its turn, and nothing else waits for that.
    const rebuilt = search.reindex('sqlite');
    await new Promise((resolve) => setTimeout(resolve, 300));
    other.exec('ROLLBACK');
    other.close();
    await rebuilt;
    expect((await search.search(query({ text: 'whistling' }))).total).toBe(1);
    await search.close();
  });

  it('answers from the index that is there while a new one is made elsewhere, and makes it here where that fails', async () => {
    const { db, url } = testDatabase();
    await fillDatabase(db, [plainCase(1, { narrative: 'humming coil' })]);
    const path = `${url.slice('file:'.length)}-search`;
    const first = createSqliteEngine(path);
    await catchUpIndex({ db, engine: first, source: { ...(await readDocumentSource(db)), fingerprint: 'other words' } });
    await first.close();
    let end: (isDone: boolean) => void = () => {};
    let asked = 0;
    const rebuildAside = () => {
      asked += 1;
      return new Promise<boolean>((resolve) => {
        end = resolve;
      });
    };
    const search = createCaseSearch({ db, local: createSqliteEngine(path), remote: null, now: Date.now, onTrouble: () => {}, rebuildAside });
    const caughtUp = search.catchUp();
    while (asked === 0) await new Promise((resolve) => setImmediate(resolve));
    await change(db, plainCase(1).id, { narrative: 'whistling coil' });
    expect((await search.search(query({ text: 'humming' }))).total).toBe(1);
    expect((await search.search(query({ text: 'whistling' }))).total).toBe(0);
    end(false);
    await caughtUp;
    expect((await search.search(query({ text: 'whistling' }))).total).toBe(1);
    expect(asked).toBe(1);
    await search.close();
  });
});
