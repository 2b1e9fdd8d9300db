import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { deleteAccount } from '../../../server/accounts/account-data';
import { findActor } from '../../../server/accounts/find-actor';
import { changeStatus } from '../../../server/repositories/submission-history';
import { openPhoto } from '../../../server/services/photo-add';
import { sweepPhotos, tidyPhotos } from '../../../server/services/photo-tidy';
import { PHOTO_LIMITS } from '../../../shared/schemas/photo';
import type { CaseStatus } from '../../../shared/schemas/case';
import { makePhoto, TRACES } from '../photos/make-photo';
import { fullForm, posting } from './posting';

const DRAFT = 'aaaaaaaaaaaaaaaa';
const ALT = 'The crystal beside the processor, cracked across';

/** A contributor with a draft that holds one photo. */
async function withPhoto() {
  const world = await posting();
  const caller = await world.as('one');
  await caller.submission.saveDraft({ id: DRAFT, isNew: true, document: fullForm() });
  const id = await add(caller);
  const files = () => (existsSync(world.photoFolder) ? readdirSync(world.photoFolder).sort() : []);
  const open = (who: Parameters<typeof openPhoto>[1], photo = id) => openPhoto(world, who, { id: photo, size: 'small' });
  return { ...world, caller, id, files, open };
}

type Caller = Awaited<ReturnType<Awaited<ReturnType<typeof posting>>['as']>>;

async function add(caller: Caller, draftId = DRAFT): Promise<string> {
  const outcome = await caller.photo.add({ draftId, bytes: await makePhoto('jpeg') });
  if (outcome.kind !== 'added') throw new Error(outcome.reason);
  return outcome.id;
}

async function submitted() {
  const world = await withPhoto();
  const document = fullForm({ photos: [{ id: world.id, alt: ALT }] });
  const outcome = await world.caller.submission.submit({ draftId: DRAFT, document });
  if (outcome.kind !== 'submitted') throw new Error(JSON.stringify(outcome));
  const to = async (status: CaseStatus) => {
    const now = await world.db.caseFile.findUniqueOrThrow({ where: { id: outcome.id }, select: { status: true } });
    const from = now.status as CaseStatus;
    await changeStatus(world.db, outcome.id, { event: 'accept', from, to: status, month: '2025-04', reason: null });
  };
  return { ...world, caseId: outcome.id, to };
}

const names = (...ids: string[]) => ids.flatMap((id) => [`${id}-large.webp`, `${id}-small.webp`]).sort();
const one = { id: 'one', role: 'contributor' } as const;
const other = { id: 'two', role: 'contributor' } as const;
const moderator = { id: 'three', role: 'moderator' } as const;

describe('photo.add', () => {
  it('keeps two files under a random name, with nothing in them of what the camera wrote', async () => {
    const { photoFolder, files, id } = await withPhoto();
    expect(files()).toEqual(names(id));
    for (const name of files()) {
      const stored = readFileSync(join(photoFolder, name)).toString('latin1');
      expect(TRACES.filter((trace) => stored.includes(trace))).toEqual([]);
      // A file's time is the first of its month.
      expect(statSync(join(photoFolder, name)).mtime.toISOString()).toMatch(/-01T00:00:00/);
    }
  });

  it('says what is wrong with a file, and keeps nothing of it', async () => {
    const { caller, files, id } = await withPhoto();
    const outcome = await caller.photo.add({ draftId: DRAFT, bytes: Buffer.from('no picture at all') });
    expect(outcome).toMatchObject({ kind: 'refused', reason: expect.stringContaining('JPEG') });
    expect(files()).toEqual(names(id));
  });

  it('takes six and no more, also at the same time', async () => {
    const { caller, files } = await withPhoto();
    const bytes = await makePhoto('png', { width: 20, height: 10 });
    const outcomes = await Promise.all(Array.from({ length: 7 }, () => caller.photo.add({ draftId: DRAFT, bytes })));
    expect(outcomes.filter(({ kind }) => kind === 'added')).toHaveLength(PHOTO_LIMITS.count - 1);
    expect(files()).toHaveLength(PHOTO_LIMITS.count * 2);
  });

  it('takes none for a draft of somebody else, or from who may only read', async () => {
    const { as, files, id } = await withPhoto();
    const bytes = await makePhoto('png', { width: 20, height: 10 });
    await expect((await as('two')).photo.add({ draftId: DRAFT, bytes })).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await expect((await as('four', 'reader')).photo.add({ draftId: DRAFT, bytes })).rejects.toMatchObject({ code: 'FORBIDDEN' });
    expect(files()).toEqual(names(id));
  });
});

describe('a photo of a draft', () => {
  it('is back when the draft is opened again, also where it was added after the last save', async () => {
    const { caller, id } = await withPhoto();
    expect((await caller.submission.getDraft({ id: DRAFT })).document.photos).toEqual([{ id, alt: '' }]);
    await caller.submission.saveDraft({ id: DRAFT, isNew: false, document: fullForm({ photos: [{ id, alt: ALT }] }) });
    expect((await caller.submission.getDraft({ id: DRAFT })).document.photos).toEqual([{ id, alt: ALT }]);
    await caller.photo.remove({ draftId: DRAFT, id });
    expect((await caller.submission.getDraft({ id: DRAFT })).document.photos).toEqual([]);
  });

  it('is for its owner alone', async () => {
    const { open } = await withPhoto();
    expect(await open(one)).toMatchObject({ isPublic: false });
    for (const who of [null, other, moderator]) expect(await open(who)).toBeNull();
  });

  it('goes with its files when it is taken out, when the draft is discarded, and when the account is deleted', async () => {
    const { caller, files, id, db, photoFolder } = await withPhoto();
    const second = await add(caller);
    await caller.photo.remove({ draftId: DRAFT, id });
    expect(files()).toEqual(names(second));
    await caller.submission.discardDraft({ id: DRAFT });
    expect(files()).toEqual([]);
    await caller.submission.saveDraft({ id: DRAFT, isNew: true, document: fullForm() });
    await add(caller);
    await tidyPhotos({ db, photoFolder }, 'one', () => deleteAccount(db, 'one'));
    expect(files()).toEqual([]);
    expect(await db.photo.count()).toBe(0);
    expect(await findActor(db, new Headers())).toBeNull();
  });

  it('has its words checked for personal details', async () => {
    const { caller, id, db } = await withPhoto();
    const photos = [{ id, alt: 'The board; write to zork@bench.example for more' }];
    const outcome = await caller.submission.submit({ draftId: DRAFT, document: fullForm({ photos }) });
    expect(outcome).toMatchObject({ kind: 'details', details: [{ field: 'photos.0.alt', kind: 'mail-address' }] });
    await caller.submission.saveDraft({ id: DRAFT, isNew: false, document: fullForm({ photos }) });
    expect((await db.draft.findFirstOrThrow()).document).not.toContain('zork@');
  });
});

describe('a photo that is sent', () => {
  it('needs words for those who cannot see it, and must be one of the draft', async () => {
    const { caller, id } = await withPhoto();
    const send = (photos: { id: string; alt: string }[], draftId: string | null = DRAFT) =>
      caller.submission.submit({ draftId, document: fullForm({ photos }) });
    expect(await send([{ id, alt: ' ' }])).toMatchObject({ kind: 'problems', problems: [{ field: 'photos.0.alt' }] });
    expect(await send([{ id: 'bbbbbbbbbbbbbbbb', alt: ALT }])).toMatchObject({ kind: 'problems', problems: [{ field: 'photos.0' }] });
    expect(await send([{ id, alt: ALT }], null)).toMatchObject({ kind: 'problems', problems: [{ field: 'photos.0' }] });
  });

  it('is for its owner and the moderators until the case is published, and then for everybody', async () => {
    const { open, visitor, caseId, id, to, as } = await submitted();
    for (const who of [one, moderator]) expect(await open(who)).toMatchObject({ isPublic: false });
    for (const who of [null, other]) expect(await open(who)).toBeNull();
    await expect(visitor.photo.ofCase({ id: caseId })).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await to('accepted');
    for (const who of [null, other, one, moderator]) expect(await open(who)).toMatchObject({ isPublic: true });
    expect(await visitor.photo.ofCase({ id: caseId })).toEqual([{ id, alt: ALT, width: 1600, height: 800 }]);
    await to('retracted');
    expect(await open(null)).toBeNull();
    expect(await (await as('three', 'moderator')).photo.ofCase({ id: caseId })).toHaveLength(1);
  });

  it('that was taken out of the form is not sent along, and its files go', async () => {
    const { caller, id, files } = await withPhoto();
    await caller.submission.submit({ draftId: DRAFT, document: fullForm({ photos: [] }) });
    expect(id).toMatch(/^[a-z2-7]{16}$/);
    expect(files()).toEqual([]);
  });

  it('goes when the case is withdrawn', async () => {
    const { caller, caseId, files, db } = await submitted();
    await caller.submission.withdraw({ id: caseId });
    expect(files()).toEqual([]);
    expect(await db.photo.count()).toBe(0);
  });

  it('stays with the case when changes are made, and when they are discarded', async () => {
    const { caller, caseId, id, files, to } = await submitted();
    await to('changes-requested');
    const { draftId } = await caller.submission.startChanges({ id: caseId });
    const { document } = await caller.submission.getDraft({ id: draftId });
    expect(document.photos).toMatchObject([{ alt: ALT }]);
    const [copy] = document.photos;
    expect(files()).toEqual(names(id, copy?.id ?? ''));
    await caller.submission.discardDraft({ id: draftId });
    expect(files()).toEqual(names(id));
    const again = await caller.submission.startChanges({ id: caseId });
    const opened = await caller.submission.getDraft({ id: again.draftId });
    const fresh = await add(caller, again.draftId);
    const photos = [{ id: fresh, alt: 'Another side' }, ...opened.document.photos];
    await caller.submission.resubmit({ id: caseId, draftId: again.draftId, document: { ...opened.document, photos } });
    expect(await caller.photo.ofCase({ id: caseId })).toMatchObject([{ id: fresh, alt: 'Another side' }, { alt: ALT }]);
    expect(files()).toEqual(names(...photos.map((photo) => photo.id)));
  });

  it('is in the download of the account, as a picture that opens', async () => {
    const { caller, caseId, id } = await submitted();
    const { cases } = await caller.account.download();
    expect(cases).toMatchObject([{ id: caseId, photos: [{ id, alt: ALT }] }]);
    const [head, data = ''] = (cases[0]?.photos[0]?.picture ?? '').split(',');
    expect(head).toBe('data:image/webp;base64');
    expect(Buffer.from(data, 'base64').toString('latin1', 8, 12)).toBe('WEBP');
  });
});

describe('sweepPhotos', () => {
  it('removes the files that belong to no photo, and no others', async () => {
    const { photoFolder, db, files, id } = await withPhoto();
    for (const name of ['bbbbbbbbbbbbbbbb-large.webp', 'bbbbbbbbbbbbbbbb-small.webp.part']) writeFileSync(join(photoFolder, name), '');
    expect(await sweepPhotos({ db, photoFolder })).toBe(2);
    expect(files()).toEqual(names(id));
    expect(await sweepPhotos({ db, photoFolder: join(photoFolder, 'nowhere') })).toBe(0);
  });
});
