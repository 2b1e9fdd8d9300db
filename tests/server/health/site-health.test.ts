import { randomKey } from '../../../server/ids';
import { describe, expect, it } from 'vitest';
import { deleteAccount } from '../../../server/accounts/account-data';
import { insertLink } from '../../../server/repositories/submission-links';
import { siteHealth } from '../../../server/services/health/site-health';
import { cutLink } from '../../../server/services/submit-changes';
import { countBins, lowerMedian } from '../../../shared/domain/health/count-bins';
import { testDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { smallCases } from '../fixtures/small-cases';
import { addPerson, append } from '../log/log-world';

const now = new Date('2026-03-15T12:00:00Z');

/** Ten accepted cases of one device, so many of them posted by one contributor. */
async function oneDevice(own: number) {
  const { db } = testDatabase();
  const cases = smallCases(10).map((record) => ({ ...record, content: { ...record.content, device: 'quellbrook-8-rev-a' } }));
  await fillDatabase(db, cases);
  await addPerson(db, 'ann');
  for (const { id } of cases.slice(0, own)) await insertLink(db, id, 'ann');
  const device = async () => (await siteHealth(db, now)).devices[0];
  return { db, cases, device };
}

describe('whose evidence it is', () => {
  it.each([
    [2, 0, false],
    [3, 1, false],
    [5, 2, true],
    [8, 3, true],
  ])('%i of 10 cases of one contributor stand in bin %i', async (own, bin, isHigh) => {
    const { device } = await oneDevice(own);
    expect(await device()).toMatchObject({ cases: 10, bin, isHigh, isFrozen: false });
  });

  it('stays in its bin after links were cut or the account deleted, and nothing says whose it was', async () => {
    const { db, cases, device } = await oneDevice(6);
    await cutLink(db, { id: 'ann', role: 'contributor' }, cases[0]?.id ?? '', randomKey);
    await cutLink(db, { id: 'ann', role: 'contributor' }, cases[1]?.id ?? '', randomKey);
    expect(await device()).toMatchObject({ bin: 2, isFrozen: true, isHigh: true });
    await deleteAccount(db, 'ann');
    expect(await device()).toMatchObject({ bin: 2, isFrozen: true, isHigh: true });
    expect(await db.frozenConcentration.findMany()).toEqual([{ modelSlug: 'quellbrook-8', bin: 2 }]);
  });
});

describe('the rest', () => {
  it('counts the queue, the decisions, the days they took and the proofs', async () => {
    const { db, cases } = await oneDevice(0);
    const [first, second, third] = cases.map(({ id }) => id);
    await db.waitingCase.create({ data: { caseId: first ?? '', since: new Date('2026-03-05T12:00:00Z') } });
    const change = { fromStatus: 'submitted', toStatus: 'accepted', month: '2026-02', reason: null };
    await db.caseStatusChange.create({ data: { caseId: second ?? '', position: 0, event: 'accept', ...change } });
    await db.caseStatusChange.create({ data: { caseId: third ?? '', position: 0, event: 'decline', ...change } });
    await db.caseStatusChange.create({
      data: { caseId: third ?? '', position: 1, event: 'accept', ...change, month: '2024-01' },
    });
    await append(db, { detail: { waitedDays: 4 } });
    const health = await siteHealth(db, now);
    expect(health.waiting).toMatchObject({ count: 1, oldestDays: 10 });
    expect(health.waiting.bins.find(({ from }) => from === 7)?.count).toBe(1);
    expect(health.decisions.accepted).toMatchObject({ count: 1, of: 2 });
    expect(health.decisions.months.filter(({ count }) => count > 0)).toEqual([{ month: '2026-02', count: 2 }]);
    expect(health.decisions.months).toHaveLength(12);
    expect(health.decided).toMatchObject({ count: 1, medianDays: 4 });
    const withCause = cases.filter(({ content }) => content.proof !== null);
    expect(health.proofs.reduce((sum, { count }) => sum + count, 0)).toBe(withCause.length);
  });

  it('bins days, and takes the lower of two middle values', () => {
    expect(countBins([0, 0, 1, 2, 30, 99], [0, 1, 3, 30]).map(({ count }) => count)).toEqual([2, 2, 0, 2]);
    expect([lowerMedian([]), lowerMedian([5, 1]), lowerMedian([9, 1, 5])]).toEqual([null, 1, 5]);
  });
});
