import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { followChanges } from '../../../server/casebook/follow-changes';
import { loadCasebook } from '../../../server/casebook/load-casebook';
import { changeStatus } from '../../../server/repositories/submission-history';
import { rowOfCase } from '../../../shared/domain/casebook/casebook-model';
import { fixRecord } from '../../../shared/domain/casebook/fix-record';
import type { DraftDocument } from '../../../shared/schemas/submission';
import { smallCases } from '../fixtures/small-cases';
import { fullForm, posting } from './posting';

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['Date'], now: new Date('2026-03-10T12:00:00Z') });
});
afterEach(() => {
  vi.useRealTimers();
});

/** A published case of a contributor, which ended a year ago and was only suspected. */
async function published(over: Partial<DraftDocument> = {}) {
  const world = await posting(smallCases(10));
  const owner = await world.as('one');
  const document = fullForm({ proof: 'suspected', provedBy: '', ...over });
  const outcome = await owner.submission.submit({ draftId: null, document });
  if (outcome.kind !== 'submitted') throw new Error(JSON.stringify(outcome));
  const { id: caseId, key = '' } = outcome;
  await changeStatus(world.db, caseId, { event: 'accept', from: 'submitted', to: 'accepted', month: '2025-05', reason: null });
  const moderator = await world.as('mod', 'moderator');
  const waiting = async () => (await moderator.afterReport.list()).map(({ id }) => id);
  const accept = async () => {
    for (const id of await waiting()) await moderator.afterReport.decide({ id, accept: true });
  };
  return { ...world, owner, moderator, caseId, key, waiting, accept };
}

describe('afterReport.send', () => {
  it('waits for a moderator, and is then on the page of the case by month, without a name', async () => {
    const { owner, as, visitor, caseId, waiting, accept } = await published();
    expect(await owner.afterReport.send({ caseId, kind: 'held', months: 12 })).toEqual({ status: 'done', key: null });
    await (await as('two', 'reader')).afterReport.send({ caseId, kind: 'held', months: 3 });
    expect(await visitor.afterReport.ofCase({ id: caseId })).toEqual([]);
    expect(await waiting()).toHaveLength(2);
    await accept();
    expect(await visitor.afterReport.ofCase({ id: caseId })).toEqual([
      { kind: 'held', months: 3, source: 'reader', month: '2026-03' },
      { kind: 'held', months: 12, source: 'contributor', month: '2026-03' },
    ]);
  });

  it('takes the place of what the same account has waiting', async () => {
    const { owner, caseId, moderator } = await published();
    await owner.afterReport.send({ caseId, kind: 'held', months: 6 });
    await owner.afterReport.send({ caseId, kind: 'came-back', months: 7 });
    expect(await moderator.afterReport.list()).toMatchObject([{ kind: 'came-back', months: 7 }]);
  });

  it('is refused for more months than have passed, for a case that nothing repaired, and for one that is not published', async () => {
    const { owner, caseId, db } = await published();
    // The repair ended in March 2025, and it is March 2026.
    expect(await owner.afterReport.send({ caseId, kind: 'held', months: 13 })).toMatchObject({
      fields: { months: expect.stringContaining('12 at most') },
    });
    await expect(owner.afterReport.send({ caseId, kind: 'held', months: 0 })).rejects.toMatchObject({ code: 'BAD_REQUEST' });
    await db.caseFile.update({ where: { id: caseId }, data: { outcome: 'unresolved' } });
    expect(await owner.afterReport.send({ caseId, kind: 'held', months: 3 })).toMatchObject({ fields: { kind: expect.any(String) } });
    await db.caseFile.update({ where: { id: caseId }, data: { status: 'submitted' } });
    await expect(owner.afterReport.send({ caseId, kind: 'held', months: 3 })).rejects.toMatchObject({ code: 'NOT_FOUND' });
  });
});

describe('afterReport.sendByKey', () => {
  it('works after the link was cut, without an account, once for each key, and ties the report to nobody', async () => {
    const { owner, visitor, caseId, key, db, moderator } = await published();
    const cut = await owner.submission.cutLink({ id: caseId });
    const report = { caseId, kind: 'held', months: 12 } as const;
    expect(await visitor.afterReport.sendByKey({ ...report, key })).toMatchObject({ fields: { key: expect.any(String) } });
    // Spaces, hyphens and capitals are how it was written down.
    const first = await visitor.afterReport.sendByKey({ ...report, key: cut.key.toUpperCase().replaceAll('-', ' ') });
    expect(first).toMatchObject({ status: 'done', key: expect.stringMatching(/^([a-z2-7]{4}-){4}[a-z2-7]{4}$/) });
    expect(await visitor.afterReport.sendByKey({ ...report, key: cut.key })).toMatchObject({ status: 'refused' });
    expect(await db.afterReporter.count()).toBe(0);
    expect(await moderator.afterReport.list()).toMatchObject([{ source: 'contributor', months: 12 }]);
    const stored = JSON.stringify(await db.afterKey.findMany());
    for (const told of [key, cut.key]) expect(stored).not.toContain(told.replaceAll('-', ''));
  });

  it('is stopped after a few tries from one address', async () => {
    const { visitor, caseId } = await published();
    const guess = () => visitor.afterReport.sendByKey({ caseId, kind: 'held', months: 3, key: 'a'.repeat(20) });
    for (let i = 0; i < 5; i++) expect(await guess()).toMatchObject({ status: 'refused' });
    await expect(guess()).rejects.toMatchObject({ code: 'TOO_MANY_REQUESTS' });
  });
});

describe('afterReport.decide', () => {
  it('is for moderators, and not on a case or a report of their own', async () => {
    const { owner, as, moderator, caseId, waiting, db } = await published();
    await owner.afterReport.send({ caseId, kind: 'held', months: 3 });
    const [id = ''] = await waiting();
    await expect(owner.afterReport.decide({ id, accept: true })).rejects.toMatchObject({ code: 'FORBIDDEN' });
    const promoted = await as('one', 'moderator');
    await expect(promoted.afterReport.decide({ id, accept: true })).rejects.toMatchObject({ cause: { code: 'own-submission' } });
    await moderator.afterReport.decide({ id, accept: false });
    await expect(moderator.afterReport.decide({ id, accept: true })).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await moderator.afterReport.send({ caseId, kind: 'held', months: 4 });
    const [own = ''] = await waiting();
    await expect(moderator.afterReport.decide({ id: own, accept: true })).rejects.toMatchObject({ cause: { code: 'own-submission' } });
    expect(await db.caseChange.count()).toBe(11);
  });

  it('lets the proof and the counts follow, as a load of the whole casebook has them', async () => {
    const { owner, caseId, accept, db } = await published();
    const casebook = await loadCasebook(db);
    const row = () => casebook.model.entries.get(rowOfCase(casebook.model, caseId));
    const crystal = () => fixRecord(casebook.model, {}).find(({ id }) => id === 'replace-crystal');
    const before = crystal();
    expect(row()?.proof).toBe('suspected');
    await owner.afterReport.send({ caseId, kind: 'held', months: 6 });
    await accept();
    expect(await followChanges(db, casebook)).toBe(1);
    expect(row()).toMatchObject({ proof: 'repair-held', coded: { proof: 2 } });
    expect(crystal()).toEqual(before);
    await owner.afterReport.send({ caseId, kind: 'came-back', months: 9 });
    await accept();
    await followChanges(db, casebook);
    expect(row()?.proof).toBe('suspected');
    expect(crystal()).toMatchObject({
      tried: before?.tried,
      resolved: (before?.resolved ?? 0) - 1,
      cameBack: (before?.cameBack ?? 0) + 1,
    });
    const again = await loadCasebook(db);
    expect(fixRecord(again.model, {})).toEqual(fixRecord(casebook.model, {}));
    expect(again.model.entries.get(rowOfCase(again.model, caseId))).toEqual(row());
  });
});

describe('what an account reported', () => {
  it('is in its download; cutting the link unties it, and deleting the account takes what was not accepted', async () => {
    const { owner, as, db, caseId, accept } = await published();
    const reader = await as('two', 'reader');
    await owner.afterReport.send({ caseId, kind: 'held', months: 12 });
    await accept();
    await reader.afterReport.send({ caseId, kind: 'came-back', months: 5 });
    expect((await owner.account.download()).reportsAfterwards).toMatchObject([{ caseId, months: 12, status: 'accepted' }]);
    await owner.submission.cutLink({ id: caseId });
    expect((await owner.account.download()).reportsAfterwards).toEqual([]);
    const { deleteAccount } = await import('../../../server/accounts/account-data');
    await deleteAccount(db, 'two');
    expect(await db.afterReport.findMany({ select: { months: true } })).toEqual([{ months: 12 }]);
    expect(await db.afterReporter.count()).toBe(0);
  });
});

describe('deleting', () => {
  it('takes a withdrawn case for good, and no other', async () => {
    const world = await posting();
    const caller = await world.as('one');
    const outcome = await caller.submission.submit({ draftId: null, document: fullForm() });
    const id = outcome.kind === 'submitted' ? outcome.id : '';
    await expect(caller.submission.remove({ id })).rejects.toMatchObject({ code: 'CONFLICT' });
    await caller.submission.withdraw({ id });
    await expect((await world.as('two')).submission.remove({ id })).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await caller.submission.remove({ id });
    expect([await world.db.caseFile.count(), await world.db.caseStep.count(), await world.db.afterKey.count()]).toEqual([0, 0, 0]);
  });

  it('an account takes its cases that are not published, and leaves those that are', async () => {
    const { owner, db, caseId } = await published();
    await owner.submission.submit({ draftId: null, document: fullForm({ narrative: 'Another unit, another day.' }) });
    const { deleteAccount } = await import('../../../server/accounts/account-data');
    await deleteAccount(db, 'one');
    expect(await db.caseFile.count()).toBe(11);
    expect(await db.caseFile.count({ where: { id: caseId } })).toBe(1);
    expect(await db.postedCase.count()).toBe(0);
  });
});
