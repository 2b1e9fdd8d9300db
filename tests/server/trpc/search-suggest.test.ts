import { describe, expect, it } from 'vitest';
import { loadCasebook } from '../../../server/casebook/load-casebook';
import { createCaseSearch } from '../../../server/search/case-search';
import { createCaller } from '../../../server/trpc/root';
import { testDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { sqliteEngine } from '../search/small-index';
import { ownPage } from './test-request';

/** Calls procedures on a casebook without cases. */
async function emptyCaller() {
  const { db } = testDatabase();
  await fillDatabase(db, []);
  const casebook = loadCasebook(db);
  const search = createCaseSearch({ db, local: sqliteEngine(), remote: null, now: Date.now, onTrouble: () => {} });
  return createCaller({ ...ownPage, db, casebook: () => casebook, search: () => search });
}

describe('search.suggest', () => {
  const labels = async (text: string) => {
    const { groups } = await (await emptyCaller()).search.suggest({ text });
    return groups.map(({ kind, items }) => [kind, ...items.map((item) => item.label)]);
  };

  it('offers pages of every kind by the beginnings of words, grouped in a fixed order', async () => {
    expect(await labels('video ra')).toEqual([
      ['part', 'video RAM'],
      ['fix', 'Replace the video RAM'],
    ]);
    expect(await labels('qb8')).toEqual([['device', 'Quellbrook 8']]);
  });

  it('knows synonyms, part numbers and one slip of the keys', async () => {
    expect(await labels('xtal')).toEqual([['part', 'clock crystal']]);
    expect(await labels('7805')).toEqual([['part', 'voltage regulator']]);
    expect(await labels('gabled')).toEqual([['symptom', 'Garbled picture']]);
  });

  it('leads to the pages', async () => {
    const { groups } = await (await emptyCaller()).search.suggest({ text: 'quellbrook' });
    expect(groups).toEqual([
      {
        kind: 'device',
        items: [
          { label: 'Quellbrook 8', href: '/devices/quellbrook-8', note: 'by Quellbrook' },
          { label: 'Quellbrook 8, revision A', href: '/devices/quellbrook-8#quellbrook-8-rev-a', note: '' },
          { label: 'Quellbrook 8, revision B', href: '/devices/quellbrook-8#quellbrook-8-rev-b', note: '' },
        ],
      },
    ]);
  });

  it('offers nothing for nothing, and does not mind a pasted page', async () => {
    expect(await labels('   ')).toEqual([]);
    expect(await labels('\u0000"(*)')).toEqual([]);
    expect(await labels('x'.repeat(10_000))).toEqual([]);
  });
});
