import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PrismaClient } from '../../../prisma/generated/client';
import { forgetLimits } from '../../../server/accounts/limits';
import { type Casebook, loadCasebook } from '../../../server/casebook/load-casebook';
import { forgetSubmitLimits } from '../../../server/services/submit-limits';
import { createCallerFactory } from '../../../server/trpc/init';
import { appRouter } from '../../../server/trpc/root';
import { ROLES, type Role } from '../../../shared/domain/can/role';
import { openTestDatabase, type TestDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { smallCases } from '../fixtures/small-cases';
import { makePhoto } from '../photos/make-photo';
import { ownPage } from '../trpc/test-request';
import { JUDGE, type Things, thingsIn } from './owned-things';

type Least = 'guest' | Role | 'nobody';
type Row = {
  /** The least role that may do it to something of its own. */
  own: Least;
  /** The same for what is somebody else's. */
  other: Least;
  /** Makes the thing for its owner, and the input that names it. */
  make: (things: Things, ownerId: string) => Promise<object>;
  /** Whether it had its effect, where an answer alone does not tell. */
  had?: (db: PrismaClient, input: Record<string, never>, answer: unknown) => Promise<boolean> | boolean;
};

const decision = (status: 'waiting' | 'accept' | 'decline', more: object | ((things: Things) => object) = {}): Row => ({
  own: 'nobody',
  other: 'moderator',
  make: async (things, ownerId) => ({
    ...(status === 'waiting' ? await things.waiting(ownerId) : await things.judged(ownerId, status)),
    ...(typeof more === 'function' ? more(things) : more),
  }),
  had: (_, __, answer) => (answer as { status?: string }).status === 'done',
});
const gone = (table: 'draft' | 'photo') => async (db: PrismaClient, input: { id?: string; draftId?: string }) => {
  const id = (table === 'photo' ? input.id : (input.draftId ?? input.id)) ?? '';
  return (table === 'draft' ? await db.draft.count({ where: { id } }) : await db.photo.count({ where: { id } })) === 0;
};
const published = async (things: Things, ownerId: string) => ({ id: (await things.judged(ownerId, 'accept')).id });
const waitingId = async (things: Things, ownerId: string) => ({ id: (await things.waiting(ownerId)).id });
const EVERYBODY = { own: 'guest', other: 'guest' } as const;
const OWNER_ALONE = { own: 'reader', other: 'nobody' } as const;
const OWNER_WHO_MAY_POST = { own: 'contributor', other: 'nobody' } as const;
const NOT_ONES_OWN = { own: 'nobody', other: 'moderator' } as const;
const ANY_MODERATOR = { own: 'moderator', other: 'moderator' } as const;
const PUBLISHED_CASE = smallCases(1)[0]?.id;
let picture: Uint8Array<ArrayBuffer>;

/** Every procedure that is done to something that can belong to an account. */
const ROWS: Record<string, Row> = {
  'submission.getDraft': { ...OWNER_WHO_MAY_POST, make: async (things, owner) => ({ id: (await things.draft(owner)).id }) },
  'submission.saveDraft': {
    ...OWNER_WHO_MAY_POST,
    make: async (things, owner) => ({ ...(await things.draft(owner)), isNew: false }),
    had: (_, __, answer) => (answer as { kind: string }).kind === 'saved',
  },
  'submission.discardDraft': {
    ...OWNER_ALONE,
    make: async (things, owner) => ({ id: (await things.draft(owner)).id }),
    had: gone('draft'),
  },
  'submission.submit': {
    ...OWNER_WHO_MAY_POST,
    make: async (things, owner) => {
      const { id, document } = await things.draft(owner);
      return { draftId: id, document };
    },
    had: gone('draft'),
  },
  'submission.startChanges': {
    ...OWNER_WHO_MAY_POST,
    make: async (things, owner) => ({ id: (await things.judged(owner, 'ask')).id }),
  },
  'submission.resubmit': {
    ...OWNER_WHO_MAY_POST,
    make: async (things, owner) => ({ id: (await things.judged(owner, 'ask')).id, draftId: null, document: things.form() }),
  },
  'submission.withdraw': { ...OWNER_ALONE, make: waitingId },
  'submission.remove': { ...OWNER_ALONE, make: async (things, owner) => ({ id: (await things.judged(owner, 'decline')).id }) },
  'submission.cutLink': { ...OWNER_ALONE, make: published },
  'photo.add': {
    ...OWNER_WHO_MAY_POST,
    make: async (things, owner) => ({ draftId: (await things.draft(owner)).id, bytes: picture }),
    had: (_, __, answer) => (answer as { kind: string }).kind === 'added',
  },
  'photo.remove': {
    ...OWNER_ALONE,
    make: async (things, owner) => {
      const draftId = (await things.draft(owner)).id;
      return { draftId, id: await things.photo({ draftId }) };
    },
    had: gone('photo'),
  },
  'photo.ofCase': {
    own: 'reader',
    other: 'moderator',
    make: async (things, owner) => {
      const { id } = await things.waiting(owner);
      await things.photo({ caseId: id });
      return { id };
    },
  },
  'bench.sync': { ...OWNER_ALONE, make: async (_, owner) => ({ account: owner, units: [], entries: [], since: 0 }) },
  'workingUnit.withdraw': { ...OWNER_ALONE, make: async (things, owner) => ({ id: await things.unit(owner) }) },
  'workingUnit.decide': { ...NOT_ONES_OWN, make: async (things, owner) => ({ id: await things.unit(owner), accept: true }) },
  'afterReport.send': {
    own: 'reader',
    other: 'reader',
    make: async (things, owner) => ({ caseId: (await published(things, owner)).id, kind: 'held', months: 3 }),
  },
  'afterReport.decide': {
    ...NOT_ONES_OWN,
    make: async (things, owner) => ({ id: await things.afterwards(owner), accept: true }),
  },
  'afterReport.ofCase': { ...EVERYBODY, make: published },
  'report.send': {
    ...EVERYBODY,
    make: async (things, owner) => ({
      ...(await published(things, owner)),
      reason: 'wrong',
      text: 'The part is another one there.',
    }),
  },
  // What waits is on nobody's page of published cases, its owner's and the moderators' included.
  'casebook.getCase': { own: 'nobody', other: 'nobody', make: waitingId },
  'review.item': { ...ANY_MODERATOR, make: waitingId },
  'review.editForm': { ...ANY_MODERATOR, make: waitingId },
  'review.claimOf': { ...ANY_MODERATOR, make: waitingId },
  'review.claim': { ...NOT_ONES_OWN, make: waitingId },
  'review.release': {
    ...ANY_MODERATOR,
    make: waitingId,
  },
  'review.accept': decision('waiting'),
  'review.acceptEdited': decision('waiting', (things) => ({ document: things.form(), text: '' })),
  'review.askForChanges': decision('waiting', { asked: [{ field: 'narrative', reason: 'Say more.' }] }),
  'review.decline': decision('waiting', { reason: 'too-little', text: '' }),
  'review.merge': decision('waiting', { into: PUBLISHED_CASE }),
  'review.correct': decision('accept', (things) => ({ document: things.form(), text: 'More was known.' })),
  'review.retract': decision('accept', { text: 'It was wrong.' }),
  'review.restore': decision('decline'),
  'review.leaveAsIs': {
    ...NOT_ONES_OWN,
    make: async (things, owner) => ({ reportId: await things.reported(owner), text: '' }),
  },
  'account.setRole': { own: 'nobody', other: 'keeper', make: async (_, owner) => ({ accountId: owner, role: 'contributor' }) },
  'account.endSessions': { own: 'keeper', other: 'keeper', make: async (_, owner) => ({ accountId: owner }) },
  'account.makeResetLink': { own: 'keeper', other: 'keeper', make: async (_, owner) => ({ accountId: owner }) },
};

/** Every other procedure: it takes nothing that belongs to anybody, or acts on whoever asks alone. */
const NO_THING = `
  account.me account.demoAccounts account.signUp account.signIn account.signOut account.signOutEverywhere account.changePassword
  account.behindReset account.resetPassword account.download account.delete account.list afterReport.sendByKey afterReport.list
  browse.overview browse.listSymptoms browse.getSymptom browse.getDevice browse.getBoardReadings browse.listParts browse.getPart
  browse.listFixes browse.getFix bench.words bench.snapshot casebook.overview casebook.listCases casebook.listVocabulary casebook.suggest
  casebook.listDevices casebook.getCatalogue casebook.fixesFor casebook.method health.overview log.byMonth log.inOrder log.export
  lookup.ask plan.make search.cases search.similar search.suggest review.queue review.next review.reports submission.standing
  submission.readWords submission.rarity submission.listMine word.care word.change word.undo workingUnit.submit workingUnit.listMine
  workingUnit.waiting
`
  .trim()
  .split(/\s+/);

let opened: TestDatabase;
let casebook: Casebook;
let things: Things;

beforeAll(async () => {
  opened = openTestDatabase();
  await fillDatabase(opened.db, smallCases(12));
  const at = new Date(0);
  const people = [JUDGE, { id: 'somebody', role: 'contributor' as const }, ...ROLES.map((role) => ({ id: `me-${role}`, role }))];
  for (const { id, role } of people) {
    await opened.db.user.create({
      data: { id, name: id, username: id, email: `${id}@bench.invalid`, role, createdAt: at, updatedAt: at },
    });
  }
  casebook = await loadCasebook(opened.db);
  things = thingsIn(opened.db, casebook.model);
  picture = await makePhoto('png', { width: 8, height: 8, plain: true });
});
afterAll(() => opened.close());

/** Codes of refusals that stand for "not yours", "not for you" and "there is no such thing for you". */
const REFUSED = ['UNAUTHORIZED', 'FORBIDDEN', 'NOT_FOUND', 'CONFLICT'];

async function mayDo(path: string, row: Row, role: Role | null, input: object): Promise<boolean> {
  forgetLimits();
  forgetSubmitLimits();
  const caller = createCallerFactory(appRouter)({
    ...ownPage,
    db: opened.db,
    casebook: async () => casebook,
    actor: role && { id: `me-${role}`, role },
  }) as unknown as Record<string, Record<string, (input: unknown) => Promise<unknown>>>;
  const [area = '', name = ''] = path.split('.');
  let answer: unknown;
  try {
    answer = await caller[area]?.[name]?.(input);
  } catch (error) {
    const { code, message } = error as { code: string; message: string };
    // Anything else is a mistake in the table: the thing was not what the procedure takes.
    if (!REFUSED.includes(code)) throw new Error(`${path} as ${role}: ${code} ${message}`);
    return false;
  }
  return row.had === undefined || row.had(opened.db, input as Record<string, never>, answer);
}

const COLUMNS = ['guest', ...ROLES] as const;
const from = (least: Least) => COLUMNS.filter((_, i) => least !== 'nobody' && i >= COLUMNS.indexOf(least));

describe('the rights over what is one’s own and what is another’s', () => {
  it('are stated for every procedure, and for none that there is not', () => {
    expect([...Object.keys(ROWS), ...NO_THING].sort()).toEqual(Object.keys(appRouter._def.procedures).sort());
  });

  it.each(Object.entries(ROWS))('hold for %s', async (path, row) => {
    const own: string[] = [];
    const other: string[] = [];
    // What nobody could do anything to is still as it was made.
    let untouched: object | null = null;
    for (const column of COLUMNS) {
      const role = column === 'guest' ? null : column;
      if (role !== null && (await mayDo(path, row, role, await row.make(things, `me-${role}`)))) own.push(column);
      untouched ??= await row.make(things, 'somebody');
      if (await mayDo(path, row, role, untouched)) {
        other.push(column);
        untouched = null;
      }
    }
    expect({ own, other }).toEqual({ own: from(row.own).filter((column) => column !== 'guest'), other: from(row.other) });
  });
});
