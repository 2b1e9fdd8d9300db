import { afterEach, describe, expect, it } from 'vitest';
import { catchUpCasebook, forgetCasebook, getCasebook } from '../../../server/casebook/current-casebook';
import { loadCasebook } from '../../../server/casebook/load-casebook';
import { writeSnapshot } from '../../../server/casebook/model-snapshot';
import { appendEvent } from '../../../server/repositories/event-log-repository';
import { saveVocabulary } from '../../../server/repositories/save-vocabulary';
import type { PrismaClient } from '../../../prisma/generated/client';
import { serialiseCounts } from '../../../shared/stats/counts-serialised';
import { testDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { smallCases } from '../fixtures/small-cases';
import { smallVocabulary } from '../fixtures/small-vocabulary';

afterEach(forgetCasebook);

const [symptom, ...others] = smallVocabulary.symptoms;

/** A moderator's new way to say a symptom, as it is stored: the numbers of the words stay, the words do not. */
async function saySymptomAnew(db: PrismaClient): Promise<void> {
  if (symptom === undefined) throw new Error('The small world has no symptom.');
  const symptoms = [{ ...symptom, synonyms: [...symptom.synonyms, 'all of it slate'] }, ...others];
  await saveVocabulary(db, { ...smallVocabulary, symptoms });
  await appendEvent(db, { id: 'edit', at: new Date('2026-05-01'), kind: 'vocabulary', actor: 'test', detail: 'A synonym was added.' });
}

describe('a casebook that has to be loaded anew', () => {
  it('goes on answering as it was until the new one is there, and leaves the event loop to others meanwhile', async () => {
    const { db } = testDatabase();
    await fillDatabase(db, smallCases(400));
    const before = await getCasebook(db);
    await saySymptomAnew(db);
    const seen = new Set<boolean>();
    let turns = 0;
    let isLoading = true;
    const others = (async () => {
      while (isLoading) {
        turns += 1;
        seen.add((await getCasebook(db)) === before);
        await new Promise((resolve) => setImmediate(resolve));
      }
    })();
    await catchUpCasebook(db);
    isLoading = false;
    await others;
    // One for each page of cases, and for each slice of the words.
    expect(turns).toBeGreaterThan(4);
    expect(seen.has(true)).toBe(true);
    const after = await getCasebook(db);
    expect(after).not.toBe(before);
    expect(after.model.read('all of it slate').findings.map(({ id }) => id)).toEqual([symptom?.slug]);
    expect(serialiseCounts(after.model.counts)).toEqual(serialiseCounts(before.model.counts));
  });
});

describe('loading with a snapshot that is written elsewhere', () => {
  it('reads that instead of every case, and every case where it could not be written', async () => {
    const { db } = testDatabase();
    await fillDatabase(db, smallCases(1_000));
    let asked = 0;
    const written = await loadCasebook(db, {
      renewAside: async () => {
        asked += 1;
        await writeSnapshot(db, await loadCasebook(db));
        return true;
      },
    });
    expect([asked, written.snapshotSeq]).toEqual([1, written.changeSeq]);
    await saySymptomAnew(db);
    const plain = await loadCasebook(db, { renewAside: async () => false });
    expect(plain.snapshotSeq).toBeNull();
    expect(serialiseCounts(written.model.counts)).toEqual(serialiseCounts(plain.model.counts));
    // What is of use is not written anew.
    await writeSnapshot(db, plain);
    const fresh = await loadCasebook(db, { renewAside: () => Promise.reject(new Error('It was there.')) });
    expect(fresh.snapshotSeq).toBe(fresh.changeSeq);
  });
});
