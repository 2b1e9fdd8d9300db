import { describe, expect, it } from 'vitest';
import { accountData } from '../../../server/accounts/account-data';
import { changeStatus } from '../../../server/repositories/submission-history';
import { findCase } from '../../../server/repositories/case-repository';
import { listMarks, listProposals } from '../../../server/repositories/submission-contents';
import type { CaseRecord } from '../../../shared/schemas/case';
import { smallCases } from '../fixtures/small-cases';
import { fullForm, posting } from './posting';

const NEW_ID = 'aaaaaaaaaaaaaaaa';

async function submitted(form = fullForm()) {
  const world = await posting();
  const caller = await world.as('one');
  const outcome = await caller.submission.submit({ draftId: null, document: form });
  if (outcome.kind !== 'submitted') throw new Error(JSON.stringify(outcome));
  return { ...world, caller, id: outcome.id };
}

const requestChanges = (db: Awaited<ReturnType<typeof posting>>['db'], caseId: string) =>
  changeStatus(db, caseId, {
    event: 'request-changes',
    from: 'submitted',
    to: 'changes-requested',
    month: '2025-04',
    reason: 'Say at which pin.',
  });

describe('submission.submit', () => {
  it('stores the case as the form means it, waiting for review', async () => {
    const { db, id } = await submitted();
    const record = await findCase(db, id);
    expect(record?.status).toBe('submitted');
    expect(record?.content).toMatchObject({
      device: 'quellbrook-8-rev-a',
      steps: [
        { kind: 'check', check: 'clock-at-processor', outcome: 'absent', designator: 'Y1', value: null, unit: null },
        { kind: 'fix', fixes: [{ fix: 'replace-crystal', designator: 'Y1' }], result: 'cured' },
      ],
      causes: [{ cause: 'clock-crystal-stopped', designators: ['Y1'] }],
      provedByStep: 0,
      soakMinutes: 60,
    });
  });

  it('reads the number beside a check, and takes the outcome from the check’s own rule', async () => {
    const step = { key: 'a', kind: 'check' as const, check: 'supply-apart', outcome: '', designator: '', reading: '4.62 V' };
    const { db, id } = await submitted(fullForm({ steps: [step], provedBy: '' }));
    // The fixture's rule: low from 0.5 V to under 4.75 V.
    expect((await findCase(db, id))?.content.steps).toEqual([
      { kind: 'check', check: 'supply-apart', outcome: 'low', designator: null, value: 4.62, unit: 'V' },
    ]);
  });

  it('changes no accepted figure, and is on no public page', async () => {
    const { visitor, as, db } = await posting(smallCases(20));
    const before = await visitor.casebook.overview();
    const caller = await as('one');
    const outcome = await caller.submission.submit({ draftId: null, document: fullForm() });
    expect(outcome.kind).toBe('submitted');
    expect(await visitor.casebook.overview()).toEqual(before);
    const id = 'id' in outcome && outcome.id ? outcome.id : NEW_ID;
    await expect(visitor.casebook.getCase({ id })).rejects.toMatchObject({ code: 'NOT_FOUND' });
    // The event log wakes the casebook up: posting is none of its business.
    expect(await db.eventLog.count()).toBe(0);
  });

  it('is one submission however often it is pressed, at the same time too', async () => {
    const { as, db } = await posting();
    const caller = await as('one');
    const outcomes = await Promise.all([1, 2, 3].map(() => caller.submission.submit({ draftId: null, document: fullForm() })));
    expect(outcomes.map((o) => o.kind).sort()).toEqual(['already', 'already', 'submitted']);
    expect(new Set(outcomes.map((o) => 'id' in o && o.id)).size).toBe(1);
    expect(await db.caseFile.count()).toBe(1);
  });

  it('tells somebody else that the case is there, and not whose it is', async () => {
    const { as } = await submitted();
    const other = await as('two');
    expect(await other.submission.submit({ draftId: null, document: fullForm() })).toEqual({
      kind: 'already',
      id: null,
      status: null,
    });
    expect((await other.submission.listMine()).submissions).toEqual([]);
  });

  it('removes the draft that it came from', async () => {
    const { as, db } = await posting();
    const caller = await as('one');
    await caller.submission.saveDraft({ id: NEW_ID, isNew: true, document: fullForm() });
    await caller.submission.submit({ draftId: NEW_ID, document: fullForm() });
    expect(await db.draft.count()).toBe(0);
  });

  it('shows personal details before anything is stored, and passes on as a mark what the contributor keeps', async () => {
    const { as, db } = await posting();
    const caller = await as('one');
    const form = fullForm({ narrative: 'Cured it. Write to zork@bench.example for the old part.' });
    const outcome = await caller.submission.submit({ draftId: null, document: form });
    expect(outcome).toMatchObject({
      kind: 'details',
      details: [{ field: 'narrative', kind: 'mail-address', text: 'zork@bench.example' }],
    });
    expect(await db.caseFile.count()).toBe(0);
    const kept = await caller.submission.submit({ draftId: null, document: { ...form, kept: ['zork@bench.example'] } });
    if (kept.kind !== 'submitted') throw new Error(JSON.stringify(kept));
    const [mark] = await listMarks(db, kept.id);
    expect(mark).toMatchObject({ field: 'narrative', kind: 'mail-address' });
    expect(form.narrative.slice(mark?.start, mark?.end)).toBe('zork@bench.example');
  });

  it('takes a proposed word to review with its case', async () => {
    const proposal = {
      key: 'p',
      kind: 'symptom' as const,
      word: 'Rolling stripes',
      meaning: 'Stripes that wander up the picture.',
    };
    const { db, id } = await submitted(fullForm({ symptoms: [], proposals: [proposal] }));
    expect(await listProposals(db, id)).toEqual([{ kind: 'symptom', word: proposal.word, meaning: proposal.meaning }]);
  });

  it('refuses a program that fills in the field that no person sees', async () => {
    const { as } = await posting();
    const caller = await as('one');
    await expect(
      caller.submission.submit({ draftId: null, document: fullForm(), website: 'http://bench.example' }),
    ).rejects.toMatchObject({ code: 'BAD_REQUEST' });
  });

  it('refuses more posts in an hour than anybody repairs', async () => {
    const { as } = await posting();
    const caller = await as('one');
    for (let i = 0; i < 30; i++) await caller.submission.submit({ draftId: null, document: fullForm({ device: '' }) });
    await expect(caller.submission.submit({ draftId: null, document: fullForm() })).rejects.toMatchObject({
      code: 'TOO_MANY_REQUESTS',
    });
  });

  it('refuses who is not signed in, and an account that may only read', async () => {
    const { as, visitor } = await posting();
    await expect(visitor.submission.submit({ draftId: null, document: fullForm() })).rejects.toMatchObject({
      code: 'UNAUTHORIZED',
    });
    const reader = await as('reader', 'reader');
    await expect(reader.submission.submit({ draftId: null, document: fullForm() })).rejects.toMatchObject({ code: 'FORBIDDEN' });
  });
});

describe('submission.withdraw', () => {
  it('takes the case back, and posting the same again takes it up', async () => {
    const { caller, id, db } = await submitted();
    expect(await caller.submission.withdraw({ id })).toEqual({ status: 'withdrawn' });
    await expect(caller.submission.withdraw({ id })).rejects.toMatchObject({ code: 'CONFLICT' });
    expect(await caller.submission.submit({ draftId: null, document: fullForm() })).toEqual({
      kind: 'submitted',
      id,
      status: 'submitted',
    });
    expect(await db.caseFile.count()).toBe(1);
    const [line] = (await caller.submission.listMine()).submissions;
    expect(line?.history.map((h) => `${h.event} ${h.to}`)).toEqual([
      'submit submitted',
      'withdraw withdrawn',
      'restore submitted',
    ]);
  });

  it('does not find a case of somebody else', async () => {
    const { as, id } = await submitted();
    for (const role of ['contributor', 'keeper'] as const) {
      const other = await as('two', role);
      await expect(other.submission.withdraw({ id })).rejects.toMatchObject({ code: 'NOT_FOUND' });
    }
  });
});

describe('submission.resubmit', () => {
  it('takes the changes that were asked for, under the same id', async () => {
    const { caller, id, db } = await submitted();
    await requestChanges(db, id);
    const { draftId } = await caller.submission.startChanges({ id });
    expect(await caller.submission.startChanges({ id })).toEqual({ draftId });
    const draft = await caller.submission.getDraft({ id: draftId });
    expect(draft.document).toMatchObject({ narrative: fullForm().narrative, soakMinutes: '60', outcome: 'resolved' });
    const document = { ...draft.document, narrative: 'No pulse at pin 6 of the processor.', soakMinutes: '' };
    expect(await caller.submission.resubmit({ id, draftId, document })).toEqual({ kind: 'submitted', id, status: 'resubmitted' });
    expect((await findCase(db, id))?.content).toMatchObject({ narrative: document.narrative, soakMinutes: null });
    expect(await db.draft.count()).toBe(0);
    const [line] = (await caller.submission.listMine()).submissions;
    expect(line?.history[1]).toMatchObject({ event: 'request-changes', reason: 'Say at which pin.' });
  });

  it('keeps the readings at pins', async () => {
    const readings = [
      { key: 'r1', designator: 'u5', pin: '3', reading: 'p' },
      { key: 'r2', designator: 'U5', pin: 'A0', reading: '4.62 V' },
    ];
    const { caller, id, db } = await submitted(fullForm({ readings }));
    const stored = [
      { designator: 'U5', pin: '3', state: 'pulsing', value: null, unit: null },
      { designator: 'U5', pin: 'A0', state: null, value: 4.62, unit: 'V' },
    ];
    expect((await findCase(db, id))?.content.readings).toEqual(stored);
    await requestChanges(db, id);
    const { draftId } = await caller.submission.startChanges({ id });
    const { document } = await caller.submission.getDraft({ id: draftId });
    expect(document.readings.map((row) => row.reading)).toEqual(['pulsing', '4.62 V']);
    await caller.submission.resubmit({ id, draftId, document: { ...document, soakMinutes: '90' } });
    expect((await findCase(db, id))?.content).toMatchObject({ readings: stored, soakMinutes: 90 });
  });

  it('refuses changes that nobody asked for', async () => {
    const { caller, id } = await submitted();
    await expect(caller.submission.startChanges({ id })).rejects.toMatchObject({ code: 'CONFLICT' });
    await expect(caller.submission.resubmit({ id, draftId: null, document: fullForm() })).rejects.toMatchObject({
      code: 'CONFLICT',
    });
  });
});

describe('submission.rarity', () => {
  it('says whether device and month single a case out, and what would hide it', async () => {
    const [first, second, third] = smallCases(3) as [CaseRecord, CaseRecord, CaseRecord];
    const at = (record: CaseRecord, device: string, month: string) => ({ ...record, content: { ...record.content, device, month } });
    const { visitor } = await posting([
      at(first, 'quellbrook-8-rev-a', '2025-03'),
      at(second, 'quellbrook-8-rev-b', '2025-03'),
      at(third, 'quellbrook-8-rev-b', '2025-09'),
    ]);
    const ask = (device: string, month: string) => visitor.submission.rarity({ device, month });
    // Counted by hand from the three cases above.
    expect(await ask('quellbrook-8-rev-a', '2025-03')).toEqual({ isUnique: false, hidesWithoutBoard: false, hidesWithoutMonth: false });
    expect(await ask('quellbrook-8-rev-a', '2025-09')).toEqual({ isUnique: true, hidesWithoutBoard: true, hidesWithoutMonth: true });
    expect(await ask('quellbrook-8-rev-b', '2025-04')).toEqual({ isUnique: true, hidesWithoutBoard: false, hidesWithoutMonth: true });
    expect(await ask('ormadic-duo', '2025-03')).toEqual({ isUnique: true, hidesWithoutBoard: false, hidesWithoutMonth: false });
  });
});

describe('submission.cutLink', () => {
  it('leaves nothing that says who posted the case, and cannot be undone', async () => {
    const { caller, id, db } = await submitted();
    await requestChanges(db, id);
    await caller.submission.startChanges({ id });
    await caller.submission.cutLink({ id });
    expect(await db.postedCase.count()).toBe(0);
    expect(await db.draft.count()).toBe(0);
    expect((await findCase(db, id))?.status).toBe('changes-requested');
    expect((await caller.submission.listMine()).submissions).toEqual([]);
    for (const again of [() => caller.submission.cutLink({ id }), () => caller.submission.withdraw({ id })]) {
      await expect(again()).rejects.toMatchObject({ code: 'NOT_FOUND' });
    }
  });

  it('goes with the account, and the case stays', async () => {
    const { id, db } = await submitted();
    await db.user.delete({ where: { id: 'one' } });
    expect(await db.postedCase.count()).toBe(0);
    expect((await findCase(db, id))?.status).toBe('submitted');
  });
});

describe('accountData', () => {
  it('hands out the drafts and the cases that are still linked, and of a case whose link was cut nothing', async () => {
    const { caller, id, db, photoFolder } = await submitted();
    await caller.submission.saveDraft({ id: NEW_ID, isNew: true, document: fullForm({ narrative: 'Another one.' }) });
    const before = await accountData({ db, photoFolder }, 'one');
    expect(before.drafts).toMatchObject([{ id: NEW_ID, document: { narrative: 'Another one.' } }]);
    expect(before.cases).toMatchObject([{ id, status: 'submitted', content: { device: 'quellbrook-8-rev-a' } }]);
    await caller.submission.cutLink({ id });
    expect((await accountData({ db, photoFolder }, 'one')).cases).toEqual([]);
  });
});

describe('a stored case', () => {
  it('names its contributor in no table but the link and the key that goes with it', async () => {
    const { db, id, caller } = await submitted();
    const tables = await db.$queryRaw<{ name: string }[]>`SELECT name FROM sqlite_master WHERE type = 'table'`;
    const naming: string[] = [];
    for (const { name } of tables) {
      const rows = await db.$queryRawUnsafe<Record<string, unknown>[]>(`SELECT * FROM "${name}"`);
      if (rows.some((row) => Object.values(row).includes('one'))) naming.push(name);
    }
    expect(naming.sort()).toEqual(['PersonKey', 'PostedCase', 'User']);
    await caller.submission.cutLink({ id });
    expect(await db.personKey.findMany({ where: { userId: 'one' }, select: { caseId: true } })).toEqual([{ caseId: '' }]);
  });
});
