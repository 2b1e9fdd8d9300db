import { describe, expect, it } from 'vitest';
import { DRAFTS_MOST } from '../../../server/services/submit-draft';
import { emptyDraft } from '../../../shared/schemas/submission';
import { fullForm, posting } from './posting';

const ID = 'aaaaaaaaaaaaaaaa';
const idOf = (n: number) => ID.slice(0, -2) + 'abcdefghijklmnop'[n >> 4] + 'abcdefghijklmnop'[n & 15];

describe('submission.saveDraft', () => {
  it('keeps a form as it was typed, however unfinished', async () => {
    const { as } = await posting();
    const caller = await as('one');
    const document = { ...emptyDraft('2025-03'), ownWords: 'grey screen, zzyzx', soakMinutes: 'an hour' };
    expect(await caller.submission.saveDraft({ id: ID, isNew: true, document })).toMatchObject({ kind: 'saved', details: [] });
    expect((await caller.submission.getDraft({ id: ID })).document).toEqual(document);
  });

  it('is one draft when a first save comes twice, and the last one stands', async () => {
    const { as, db } = await posting();
    const caller = await as('one');
    for (const outcome of ['resolved', 'unresolved'] as const) {
      await caller.submission.saveDraft({ id: ID, isNew: true, document: fullForm({ outcome }) });
    }
    expect(await db.draft.count()).toBe(1);
    expect((await caller.submission.getDraft({ id: ID })).document.outcome).toBe('unresolved');
  });

  it('does not bring a discarded draft back', async () => {
    const { as, db } = await posting();
    const caller = await as('one');
    await caller.submission.saveDraft({ id: ID, isNew: true, document: fullForm() });
    await caller.submission.discardDraft({ id: ID });
    expect(await caller.submission.saveDraft({ id: ID, isNew: false, document: fullForm() })).toEqual({ kind: 'gone' });
    expect(await db.draft.count()).toBe(0);
  });

  it('stores no personal detail that is not settled, in whichever text it stands, and says where it was', async () => {
    const { as, db } = await posting();
    const caller = await as('one');
    const mail = 'zork@bench.example';
    const document = fullForm({
      narrative: `Ask ${mail}.`,
      ownWords: mail,
      proposals: [{ key: 'p', kind: 'symptom', word: 'Stripes', meaning: `As ${mail} says.` }],
    });
    const outcome = await caller.submission.saveDraft({ id: ID, isNew: true, document });
    if (outcome.kind !== 'saved') throw new Error(outcome.kind);
    expect(outcome.details.map((d) => d.field).sort()).toEqual(['narrative', 'ownWords', 'proposals.0.meaning']);
    const stored = await db.draft.findFirstOrThrow();
    expect(stored.document).not.toContain('zork');
    expect(stored.document).toContain('Ask [mail address].');
    await caller.submission.saveDraft({ id: ID, isNew: false, document: { ...document, kept: [mail] } });
    expect((await caller.submission.getDraft({ id: ID })).document.narrative).toBe(`Ask ${mail}.`);
  });

  it('takes so many drafts and no more, and says so', async () => {
    const { as } = await posting();
    const caller = await as('one');
    const document = emptyDraft('2025-03');
    for (let n = 0; n < DRAFTS_MOST; n++) await caller.submission.saveDraft({ id: idOf(n), isNew: true, document });
    expect(await caller.submission.saveDraft({ id: idOf(DRAFTS_MOST), isNew: true, document })).toEqual({
      kind: 'full',
      most: DRAFTS_MOST,
    });
    expect(await caller.submission.saveDraft({ id: idOf(0), isNew: false, document })).toMatchObject({ kind: 'saved' });
  });
});

describe('a draft', () => {
  it('is there for its owner alone', async () => {
    const { as, db } = await posting();
    const owner = await as('one');
    const other = await as('two', 'keeper');
    await owner.submission.saveDraft({ id: ID, isNew: true, document: fullForm() });
    await expect(other.submission.getDraft({ id: ID })).rejects.toMatchObject({ code: 'NOT_FOUND' });
    expect(await other.submission.saveDraft({ id: ID, isNew: false, document: fullForm({ narrative: 'mine now' }) })).toEqual({
      kind: 'gone',
    });
    await other.submission.discardDraft({ id: ID });
    expect((await owner.submission.getDraft({ id: ID })).document.narrative).toBe(fullForm().narrative);
    expect((await other.submission.listMine()).drafts).toEqual([]);
    expect(await db.draft.count()).toBe(1);
  });

  it('goes with its account', async () => {
    const { as, db } = await posting();
    await (await as('one')).submission.saveDraft({ id: ID, isNew: true, document: fullForm() });
    await db.user.delete({ where: { id: 'one' } });
    expect(await db.draft.count()).toBe(0);
  });
});

describe('submission.readWords', () => {
  it('reads as the look-up does, for visitors too', async () => {
    const { visitor } = await posting();
    const read = await visitor.submission.readWords({ text: 'grey screen, clock present, zzyzx' });
    expect(read.findings.map((f) => [f.kind, f.id, f.value, f.valueLabel])).toEqual([
      ['symptom', 'grey-screen', 'present', 'present'],
      ['check', 'clock-at-processor', 'pulsing', 'pulsing'],
    ]);
    expect(read.unread.join(' ')).toContain('zzyzx');
  });
});
