import { beforeEach, describe, expect, it } from 'vitest';
import { listCaseChanges } from '../../../server/repositories/case-change-repository';
import { listRevisions } from '../../../server/repositories/case-revisions';
import { findCase } from '../../../server/repositories/case-repository';
import { listMarks } from '../../../server/repositories/submission-contents';
import { draftOfContent } from '../../../shared/domain/submission/draft-of-content';
import type { CaseContent } from '../../../shared/schemas/case';
import { waitingWorld } from './waiting-world';

let world: Awaited<ReturnType<typeof waitingWorld>>;
beforeEach(async () => {
  world = await waitingWorld();
});

const formOf = (content: CaseContent) => {
  let keys = 0;
  return draftOfContent(content, [], () => `k${keys++}`);
};
const contentOf = async (id: string) => (await findCase(world.db, id))?.content as CaseContent;
const changesOf = async (id: string) =>
  (await listCaseChanges(world.db, { after: 0, take: 500 })).filter((change) => change.caseId === id).length;
const refusal = (code: string) => ({ cause: { code } });

describe('accepting', () => {
  it('publishes the case, keeps it as a revision, tells the feed, and takes it out of the queue with its exact time', async () => {
    const { moderator, id, seen, status, db } = world;
    expect(await db.waitingCase.count()).toBe(1);
    expect(await moderator.review.accept({ id, seen: await seen() })).toEqual({ status: 'done' });
    expect(await status()).toBe('accepted');
    expect(await db.waitingCase.count()).toBe(0);
    expect(await changesOf(id)).toBe(1);
    expect(await listRevisions(db, id)).toMatchObject([{ number: 1, writer: 'contributor', content: await contentOf(id) }]);
  });

  it('is refused to whoever posted it, moderator or not', async () => {
    const { as, id, seen, status } = world;
    const promoted = await as('one', 'moderator');
    await expect(promoted.review.accept({ id, seen: await seen() })).rejects.toMatchObject(refusal('own-submission'));
    expect(await status()).toBe('submitted');
  });

  it('is refused for what was changed since it was looked at, and the second time', async () => {
    const { moderator, other, id, seen } = world;
    await expect(moderator.review.accept({ id, seen: 'a'.repeat(64) })).rejects.toMatchObject(refusal('changed-meanwhile'));
    const now = await seen();
    await moderator.review.accept({ id, seen: now });
    await expect(other.review.accept({ id, seen: now })).rejects.toMatchObject(refusal('move-not-possible'));
  });

  it('with edits keeps both versions and the readings, and shows the contributor which is whose', async () => {
    const { moderator, id, seen, db } = world;
    const before = await contentOf(id);
    const document = { ...formOf(before), narrative: 'No pulse at the processor; a new crystal cured it.' };
    const outcome = await moderator.review.acceptEdited({ id, seen: await seen(), document, text: 'Shortened.' });
    expect(outcome).toEqual({ status: 'done' });
    expect((await listRevisions(db, id)).map(({ writer, content }) => [writer, content.narrative])).toEqual([
      ['contributor', before.narrative],
      ['moderator', document.narrative],
    ]);
    expect(await contentOf(id)).toEqual({ ...before, narrative: document.narrative });
  });

  it('with edits is held to what a submission is held to: faults and personal details come back, nothing changes', async () => {
    const { moderator, id, seen, status } = world;
    const form = formOf(await contentOf(id));
    const input = { id, seen: await seen(), text: '' };
    expect(await moderator.review.acceptEdited({ ...input, document: { ...form, outcome: '' } })).toMatchObject({
      status: 'problems',
      problems: [{ field: 'outcome' }],
    });
    const named = { ...form, narrative: 'Ask me at bench@example.org about it.' };
    expect(await moderator.review.acceptEdited({ ...input, document: named })).toMatchObject({ status: 'details' });
    expect(await status()).toBe('submitted');
    expect(await listMarks(world.db, id)).toEqual([]);
  });
});

describe('turning down', () => {
  it('asks for changes at a field, takes them, and the case comes back at the end of the queue', async () => {
    const { moderator, contributor, id, seen, db } = world;
    const asked = [{ field: 'steps.0', reason: 'Say at which pin.' }];
    await moderator.review.askForChanges({ id, seen: await seen(), asked });
    expect(await db.waitingCase.count()).toBe(0);
    const [line] = (await contributor.submission.listMine()).submissions;
    expect(line?.history.at(-1)).toMatchObject({ event: 'request-changes', reason: 'Step 1: Say at which pin.' });
    const { draftId } = await contributor.submission.startChanges({ id });
    const { document, asked: told } = await contributor.submission.getDraft({ id: draftId });
    expect(told).toEqual([{ ...asked[0], stepKey: document.steps[0]?.key }]);
    const narrative = 'No pulse at pin 6 of the processor.';
    await contributor.submission.resubmit({ id, draftId, document: { ...document, narrative } });
    expect((await listRevisions(db, id)).map((r) => r.writer)).toEqual(['contributor', 'contributor']);
    expect((await moderator.review.queue()).lines).toMatchObject([{ id, again: true }]);
  });

  it('declines with a reason that the contributor reads, and can be undone', async () => {
    const { moderator, contributor, id, seen, status } = world;
    await expect(moderator.review.decline({ id, seen: await seen(), reason: 'other', text: '' })).rejects.toMatchObject({
      code: 'BAD_REQUEST',
    });
    await moderator.review.decline({ id, seen: await seen(), reason: 'too-little', text: 'Which check came first?' });
    const [line] = (await contributor.submission.listMine()).submissions;
    expect(line?.history.at(-1)?.reason).toBe(
      'There is too little in it for the next person to learn from. Which check came first?',
    );
    await moderator.review.restore({ id, seen: await seen() });
    expect(await status()).toBe('submitted');
    expect((await moderator.review.queue()).counts.all).toBe(1);
  });

  it('merges into a published case, which then says so, and undoes it', async () => {
    const { moderator, visitor, id, seen, status, firstPublished: into } = world;
    expect(await moderator.review.merge({ id, seen: await seen(), into: id })).toMatchObject({ status: 'refused' });
    expect(await moderator.review.merge({ id, seen: await seen(), into })).toEqual({ status: 'done' });
    expect(await status()).toBe('merged');
    expect(await visitor.casebook.getCase({ id: into })).toMatchObject({ reported: 2 });
    await expect(visitor.casebook.getCase({ id })).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await moderator.review.restore({ id, seen: await seen() });
    expect(await status()).toBe('submitted');
    expect(await visitor.casebook.getCase({ id: into })).toMatchObject({ reported: 1 });
  });
});

describe('a published case', () => {
  it('is retracted and restored, and each time the feed is told', async () => {
    const { moderator, visitor, seen, firstPublished: id } = world;
    const before = await changesOf(id);
    await moderator.review.retract({ id, seen: await seen(id), text: 'The cause was another one.' });
    expect(await changesOf(id)).toBe(before + 1);
    await expect(visitor.casebook.getCase({ id })).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await moderator.review.restore({ id, seen: await seen(id) });
    expect((await visitor.casebook.getCase({ id })).id).toBe(id);
  });

  it('is corrected into a new revision, the old one kept', async () => {
    const { moderator, seen, db, firstPublished: id } = world;
    const before = await contentOf(id);
    const document = { ...formOf(before), narrative: 'Told anew.' };
    expect(await moderator.review.correct({ id, seen: await seen(id), document, text: 'It named the wrong pin.' })).toEqual({
      status: 'done',
    });
    const revisions = await listRevisions(db, id);
    expect(revisions.map((r) => r.content.narrative)).toEqual([before.narrative, 'Told anew.']);
    expect((await contentOf(id)).readings).toEqual(before.readings);
  });
});

describe('reports', () => {
  it('come from anybody, stand in their own list, and are settled with the case', async () => {
    const { visitor, moderator, seen, db, firstPublished: id } = world;
    const report = { id, reason: 'wrong' as const, text: 'Step 2 reads the wrong way round.' };
    expect(await visitor.report.send(report)).toEqual({ status: 'done' });
    await visitor.report.send(report);
    expect((await moderator.review.reports()).lines).toMatchObject([{ report: { caseId: id, text: report.text }, view: { id } }]);
    expect((await moderator.review.queue()).reports).toBe(1);
    await moderator.review.retract({ id, seen: await seen(id), text: 'It does read the wrong way round.' });
    expect((await moderator.review.reports()).lines).toEqual([]);
    expect(await db.caseReport.findMany({ select: { settledAs: true, since: true } })).toEqual([
      { settledAs: 'retracted', since: null },
    ]);
  });

  it('can be settled without touching the case, and do not say who sent them', async () => {
    const { contributor, moderator, db, status, firstPublished: id } = world;
    await contributor.report.send({ id, reason: 'other', text: 'I do not like this one.' });
    const [row] = await db.caseReport.findMany();
    expect(JSON.stringify(row)).not.toContain('one"');
    const [line] = (await moderator.review.reports()).lines;
    await moderator.review.leaveAsIs({ reportId: line?.report.id ?? '', text: '' });
    expect(await status(id)).toBe('accepted');
    expect((await moderator.review.reports()).lines).toEqual([]);
  });

  it('are refused with contact details in them, about what is not published, and beyond a limit', async () => {
    const { visitor, id, firstPublished } = world;
    const text = 'Write to me at bench@example.org about it.';
    expect(await visitor.report.send({ id: firstPublished, reason: 'wrong', text })).toMatchObject({ status: 'refused' });
    await expect(visitor.report.send({ id, reason: 'wrong', text: 'Not there at all.' })).rejects.toMatchObject({
      code: 'NOT_FOUND',
    });
    const send = (n: number) =>
      visitor.report.send({ id: firstPublished, reason: 'wrong', text: `Number ${n} of many reports.` });
    for (let n = 0; n < 3; n += 1) await send(n);
    await expect(send(9)).rejects.toMatchObject({ code: 'TOO_MANY_REQUESTS' });
  });
});
