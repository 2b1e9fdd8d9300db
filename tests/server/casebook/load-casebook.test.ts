import { afterEach, describe, expect, it } from 'vitest';
import { forgetCasebook, getCasebook } from '../../../server/casebook/current-casebook';
import { fitAndStore } from '../../../server/casebook/fit-and-store';
import { loadCasebook } from '../../../server/casebook/load-casebook';
import { randomCaseId } from '../../../server/ids';
import { listEvents } from '../../../server/repositories/event-log-repository';
import { importCases } from '../../../server/services/import-cases';
import { testDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { plainCase, plainContent } from '../fixtures/plain-case';
import { smallCases } from '../fixtures/small-cases';
import { smallModel } from '../fixtures/small-model';

afterEach(forgetCasebook);

const who = { newId: randomCaseId, actor: 'test' };

describe('loadCasebook', () => {
  it('counts the accepted cases alone, to the same numbers as adding them one by one', async () => {
    const { db } = testDatabase();
    const cases = smallCases(120);
    await fillDatabase(db, [...cases, { ...plainCase(1), status: 'submitted' }, { ...plainCase(2), status: 'retracted' }]);
    const { model } = await loadCasebook(db);
    const expected = smallModel(cases);
    expect(model.entries.size).toBe(120);
    expect(model.counts.causeWeights).toEqual(expected.counts.causeWeights);
    expect(model.estimator.probabilities(0, [])).toEqual(expected.estimator.probabilities(0, []));
  });

  it('refuses a database without devices by name', async () => {
    const { db } = testDatabase();
    await expect(loadCasebook(db)).rejects.toMatchObject({ code: 'casebook-empty' });
  });
});

describe('fitAndStore', () => {
  it('puts settings in use that the next load takes, and logs it', async () => {
    const { db } = testDatabase();
    await fillDatabase(db, smallCases(150));
    const before = await loadCasebook(db);
    const outcome = await fitAndStore(db, new Date('2026-01-02T03:04:05Z'), who);
    const after = await loadCasebook(db);
    expect(before.settings.fittedAt).toBeNull();
    expect(outcome).toMatchObject({ records: 150, changed: true });
    expect(outcome.largestShift).toBeGreaterThan(0);
    expect(after.settings).toEqual({ hash: outcome.hash, fittedAt: new Date('2026-01-02T03:04:05Z') });
    expect((await listEvents(db)).map((e) => e.kind)).toEqual(['fit']);
  });

  it('finds the same settings again from the same cases', async () => {
    const { db } = testDatabase();
    await fillDatabase(db, smallCases(150));
    const first = await fitAndStore(db, new Date('2026-01-02'), who);
    const second = await fitAndStore(db, new Date('2026-01-03'), who);
    expect(second).toEqual({ hash: first.hash, records: 150, changed: false, largestShift: 0 });
  });
});

describe('getCasebook', () => {
  it('loads once for any number of questions at the same time', async () => {
    const { db } = testDatabase();
    await fillDatabase(db, smallCases(5));
    const [first, second] = await Promise.all([getCasebook(db), getCasebook(db)]);
    expect(first).toBe(second);
  });

  it('tries again after a load that failed', async () => {
    const { db } = testDatabase();
    await expect(getCasebook(db)).rejects.toMatchObject({ code: 'casebook-empty' });
    await fillDatabase(db, smallCases(5));
    expect((await getCasebook(db)).model.entries.size).toBe(5);
  });

  it('takes up what another program imported and accepted, some seconds later', async () => {
    const { db } = testDatabase();
    await fillDatabase(db, smallCases(5));
    let time = 0;
    const now = () => time;
    expect((await getCasebook(db, now)).model.entries.size).toBe(5);
    const cases = [{ id: null, content: plainContent() }];
    await importCases(db, { cases, accept: true, source: 'a file', actor: 'test', now: new Date(), newId: randomCaseId });
    expect((await getCasebook(db, now)).model.entries.size).toBe(5);
    time = 11_000;
    await getCasebook(db, now);
    await expect.poll(async () => (await getCasebook(db, now)).model.entries.size).toBe(6);
  });

  it('loads anew after a fit by another program', async () => {
    const { db } = testDatabase();
    await fillDatabase(db, smallCases(40));
    let time = 0;
    const now = () => time;
    const before = await getCasebook(db, now);
    await fitAndStore(db, new Date('2026-01-02'), who);
    time = 11_000;
    await getCasebook(db, now);
    await expect.poll(async () => await getCasebook(db, now)).not.toBe(before);
  });
});
