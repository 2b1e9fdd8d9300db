import { afterEach, describe, expect, it } from 'vitest';
import { forgetCasebook, getCasebook } from '../../../server/casebook/current-casebook';
import { followChanges } from '../../../server/casebook/follow-changes';
import { type Casebook, loadCasebook } from '../../../server/casebook/load-casebook';
import { tellFollowers } from '../../../server/change-feed/tell-followers';
import { findNewestChange, listCaseChanges } from '../../../server/repositories/case-change-repository';
import { replaceContent } from '../../../server/repositories/submission-contents';
import { changeStatus } from '../../../server/repositories/submission-history';
import type { CaseStatus } from '../../../shared/schemas/case';
import { serialiseCounts } from '../../../shared/stats/counts-serialised';
import type { CaseEvent } from '../../../shared/domain/submission/next-status';
import { testDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { plainCase } from '../fixtures/plain-case';
import { smallCases } from '../fixtures/small-cases';

afterEach(forgetCasebook);

const change = (event: CaseEvent, from: CaseStatus, to: CaseStatus) => ({ event, from, to, month: '2026-11', reason: null });

describe('followChanges', () => {
  it('gives the counts of a new load, whatever was accepted, changed, taken back and restored', async () => {
    const { db } = testDatabase();
    const cases = smallCases(60);
    const waiting = { ...plainCase(1), status: 'submitted' as const };
    await fillDatabase(db, [...cases, waiting]);
    const casebook = await loadCasebook(db);
    const [first, second, third] = cases.map(({ id }) => id) as [string, string, string];
    await changeStatus(db, waiting.id, change('accept', 'submitted', 'accepted'));
    await changeStatus(db, first, change('retract', 'accepted', 'retracted'));
    await changeStatus(db, second, change('retract', 'accepted', 'retracted'));
    await changeStatus(db, second, change('restore', 'retracted', 'accepted'));
    await replaceContent(db, third, 'accepted', waiting.content);
    expect(await followChanges(db, casebook)).toBe(5);
    const anew = await loadCasebook(db);
    expect(serialiseCounts(casebook.model.counts)).toEqual(serialiseCounts(anew.model.counts));
    const ids = (of: Casebook) => [...of.model.entries.values()].map(({ id }) => id).sort();
    expect(ids(casebook)).toEqual(ids(anew));
    expect(casebook.changeSeq).toBe(anew.changeSeq);
    expect(await followChanges(db, casebook)).toBe(0);
  });

  it('has nothing to follow where a case changes before it is published', async () => {
    const { db } = testDatabase();
    const waiting = { ...plainCase(1), status: 'submitted' as const };
    await fillDatabase(db, [waiting]);
    await changeStatus(db, waiting.id, change('request-changes', 'submitted', 'changes-requested'));
    await replaceContent(db, waiting.id, 'changes-requested', plainCase(2).content);
    expect(await findNewestChange(db)).toBe(0);
  });

  it('leaves no change behind where the transaction that made it fails', async () => {
    const { db } = testDatabase();
    const [record] = smallCases(1);
    await fillDatabase(db, [record as NonNullable<typeof record>]);
    const before = await findNewestChange(db);
    const failing = db.$transaction(async (tx) => {
      await changeStatus(tx, (record as NonNullable<typeof record>).id, change('retract', 'accepted', 'retracted'));
      throw new Error('cut off');
    });
    await expect(failing).rejects.toThrow('cut off');
    expect(await listCaseChanges(db, { after: before, take: 10 })).toEqual([]);
  });
});

describe('tellFollowers', () => {
  it('shows a case taken back in this process in the very next answer', async () => {
    const { db } = testDatabase();
    const cases = smallCases(12);
    await fillDatabase(db, cases);
    const casebook = await getCasebook(db);
    expect(casebook.model.entries.size).toBe(12);
    await changeStatus(db, (cases[4] as (typeof cases)[number]).id, change('retract', 'accepted', 'retracted'));
    await tellFollowers(db);
    expect((await getCasebook(db)).model.entries.size).toBe(11);
  });
});
