import { describe, expect, it } from 'vitest';
import { claimCase } from '../../../server/services/review/claim-case';
import { nextFree, queuePage } from '../../../server/services/review/list-queue';
import { enterQueue } from '../../../server/repositories/waiting-cases';
import { insertCases } from '../../../server/repositories/insert-cases';
import { queueFilterSchema } from '../../../shared/schemas/review';
import { loadCasebook } from '../../../server/casebook/load-casebook';
import { plainCase } from '../fixtures/plain-case';
import { waitingWorld } from './waiting-world';

const filter = (over: object = {}) => queueFilterSchema.parse(over);
const mod = { id: 'mod', role: 'moderator' as const };
const mod2 = { id: 'mod-2', role: 'moderator' as const };
const at = (minutes: number) => new Date(Date.UTC(2026, 0, 1) + minutes * 60_000);

describe('the queue', () => {
  it('filters by device, marks, new contributors and proposed words, and counts each', async () => {
    const { moderator, post, id } = await waitingWorld();
    const kept = 'Ask at bench@example.org about it.';
    const marked = await post({ narrative: kept, kept: ['bench@example.org'] });
    const worded = await post({
      device: 'ormadic-duo',
      narrative: 'Another one.',
      steps: [],
      causes: [],
      provedBy: '',
      proof: '',
      afterRepairChecks: [],
      proposals: [{ key: 'p', kind: 'symptom', word: 'purple fringe', meaning: 'A purple edge along bright shapes.' }],
    });
    const ids = async (over: object) => (await moderator.review.queue({ filter: filter(over) })).lines.map((line) => line.id);
    expect(await ids({})).toEqual([id, marked, worded]);
    expect(await ids({ order: 'newest' })).toEqual([worded, marked, id]);
    expect(await ids({ marks: true })).toEqual([marked]);
    expect(await ids({ words: true })).toEqual([worded]);
    expect(await ids({ device: 'ormadic-duo' })).toEqual([worded]);
    expect(await ids({ newcomer: true })).toHaveLength(3);
    const { counts, devices } = await moderator.review.queue();
    expect(counts).toEqual({ all: 3, marks: 1, words: 1, newcomer: 3, lookedAt: 0 });
    expect(devices).toEqual([
      { slug: 'ormadic-duo', label: 'Ormadic Duo', waiting: 1 },
      { slug: 'quellbrook-8', label: 'Quellbrook 8', waiting: 2 },
    ]);
  });

  it('takes a contributor as new until something of theirs is published', async () => {
    const { moderator, post, id, seen } = await waitingWorld();
    await post({ narrative: 'The second one.' });
    await moderator.review.accept({ id, seen: await seen() });
    expect((await moderator.review.queue()).lines).toMatchObject([{ newcomer: false }]);
    expect((await moderator.review.queue()).counts.newcomer).toBe(0);
  });

  it('shows every waiting case once over its pages, in order', async () => {
    const { db } = await waitingWorld();
    const cases = Array.from({ length: 60 }, (_, n) => ({
      ...plainCase(n, { narrative: `Unit ${n}.` }),
      status: 'submitted' as const,
    }));
    await insertCases(db, cases, { newId: () => '' });
    // Ten at a time come in at the same moment: the id decides between them.
    for (let n = 0; n < 60; n += 10)
      await enterQueue(
        db,
        cases.slice(n, n + 10).map((c) => c.id),
        at(n),
      );
    const { model } = await loadCasebook(db);
    const got: string[] = [];
    let cursor: string | null = null;
    do {
      const page: Awaited<ReturnType<typeof queuePage>> = await queuePage(db, model, {
        actor: mod,
        filter: filter(),
        cursor,
        now: at(99),
      });
      got.push(...page.lines.map((line) => line.id));
      cursor = page.next;
    } while (cursor !== null);
    expect(got.slice(0, 60)).toEqual(cases.map((c) => c.id));
    expect(new Set(got).size).toBe(61);
  });
});

describe('a claim', () => {
  it('goes to one of two who ask at once; the other sees who has it', async () => {
    const { moderator, other, id } = await waitingWorld();
    const views = await Promise.all([moderator.review.claim({ id }), other.review.claim({ id })]);
    expect(views.map((view) => view.state).sort()).toEqual(['mine', 'other']);
    const winner = views[0]?.state === 'mine' ? 'mod' : 'mod-2';
    expect(views.find((view) => view.state === 'other')).toMatchObject({ by: winner });
    expect((await moderator.review.queue()).counts.lookedAt).toBe(1);
  });

  it('keeps the others from deciding until it has run out, and is renewed by whoever holds it', async () => {
    const { db, other, id, seen } = await waitingWorld();
    await claimCase(db, { actor: mod, id, now: new Date() });
    await expect(other.review.accept({ id, seen: await seen() })).rejects.toMatchObject({
      cause: { code: 'looked-at-by-other' },
    });
    expect(await claimCase(db, { actor: mod, id, now: at(0) })).toMatchObject({ state: 'mine', minutes: 20 });
    expect(await claimCase(db, { actor: mod, id, now: at(15) })).toMatchObject({ state: 'mine', minutes: 20 });
    expect(await claimCase(db, { actor: mod2, id, now: at(34) })).toMatchObject({ state: 'other', minutes: 1 });
    expect(await claimCase(db, { actor: mod2, id, now: at(35) })).toMatchObject({ state: 'mine' });
    expect(await claimCase(db, { actor: mod, id, now: at(36) })).toMatchObject({ state: 'other', by: 'mod-2' });
  });

  it('can be given back, and is not for one’s own submission', async () => {
    const { moderator, other, as, id } = await waitingWorld();
    await moderator.review.claim({ id });
    await other.review.release({ id });
    expect(await other.review.claim({ id })).toMatchObject({ state: 'other' });
    await moderator.review.release({ id });
    expect(await other.review.claim({ id })).toMatchObject({ state: 'mine' });
    const own = await as('one', 'moderator');
    await expect(own.review.claim({ id })).rejects.toMatchObject({ cause: { code: 'own-submission' } });
  });

  it('cannot be had by cutting the link to one’s own submission first', async () => {
    const { as, id } = await waitingWorld();
    const own = await as('one', 'moderator');
    await expect(own.submission.cutLink({ id })).rejects.toMatchObject({ cause: { code: 'move-not-possible' } });
    await own.submission.withdraw({ id });
    await own.submission.cutLink({ id });
  });

  it('leads on to what nobody looks at and is not one’s own, after this one and then from the start', async () => {
    const { db, post, id } = await waitingWorld();
    const second = await post({ narrative: 'The second one.' });
    const third = await post({ narrative: 'The third one.' });
    const next = (actor: typeof mod | { id: string; role: 'moderator' }, afterId: string | null) =>
      nextFree(db, { actor, filter: filter(), afterId, now: new Date() });
    expect(await next(mod, null)).toBe(id);
    expect(await next(mod, id)).toBe(second);
    expect(await next(mod, third)).toBe(id);
    await claimCase(db, { actor: mod2, id: second, now: new Date() });
    expect(await next(mod, id)).toBe(third);
    expect(await next({ id: 'one', role: 'moderator' }, null)).toBeNull();
  });
});
