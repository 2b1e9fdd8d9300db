import { beforeAll, describe, expect, it } from 'vitest';
import { forgetLimits } from '../../../server/accounts/limits';
import { forgetSubmitLimits } from '../../../server/services/submit-limits';
import { createCallerFactory, guards } from '../../../server/trpc/init';
import { appRouter } from '../../../server/trpc/root';
import { ROLES, type Role } from '../../../shared/domain/can/role';
import { openTestDatabase, type TestDatabase } from '../../setup/test-database';
import { ownPage } from '../trpc/test-request';

/** Who may call what, from the least role on; `guest` is who is not signed in. Every procedure stands here. */
const FROM: Record<'guest' | Role, string> = {
  guest: `account.behindReset account.demoAccounts account.me account.resetPassword account.signIn account.signOut account.signUp afterReport.ofCase afterReport.sendByKey bench.snapshot bench.words log.byMonth photo.ofCase report.send submission.rarity submission.readWords submission.standing`,
  reader: `account.changePassword account.delete account.download account.signOutEverywhere afterReport.send bench.sync photo.remove submission.cutLink submission.discardDraft submission.listMine submission.remove submission.withdraw workingUnit.listMine workingUnit.withdraw`,
  contributor: `photo.add submission.getDraft submission.resubmit submission.saveDraft submission.startChanges submission.submit workingUnit.submit`,
  moderator: `afterReport.decide afterReport.list log.export log.inOrder review.accept review.acceptEdited review.askForChanges review.claim review.claimOf review.correct review.decline review.editForm review.item review.leaveAsIs review.merge review.next review.queue review.release review.reports review.restore review.retract word.care word.change word.undo workingUnit.decide workingUnit.waiting`,
  keeper: `account.endSessions account.list account.makeResetLink account.setRole health.overview`,
};

/** Parts of the router that only read what is published: open to everybody, whatever is added to them. */
const OPEN_READS = ['browse', 'casebook', 'lookup', 'plan', 'search', 'snapshot'];

type Walked = { _def: { type: string; middlewares: unknown[] } };
const procedures = Object.entries(appRouter._def.procedures) as unknown as [string, Walked][];
const COLUMNS = ['guest', ...ROLES] as const;
const least = new Map(COLUMNS.flatMap((role) => FROM[role].split(/\s+/).map((path) => [path, role] as const)));
const leastFor = (path: string) => least.get(path) ?? (OPEN_READS.includes(path.split('.')[0] ?? '') ? 'guest' : undefined);

let opened: TestDatabase;
beforeAll(() => {
  opened = openTestDatabase();
  return opened.close;
});

/** Whether a procedure lets somebody of this role in; what it says of the empty input comes after that. */
async function letsIn(path: string, role: Role | null): Promise<boolean> {
  forgetLimits();
  forgetSubmitLimits();
  const caller = createCallerFactory(appRouter)({
    ...ownPage,
    db: opened.db,
    casebook: () => Promise.reject(new Error('No right depends on the casebook.')),
    actor: role && { id: 'nobody', role },
  }) as unknown as Record<string, Record<string, (input: unknown) => Promise<unknown>>>;
  const [area = '', name = ''] = path.split('.');
  try {
    await caller[area]?.[name]?.({});
    return true;
  } catch (error) {
    const { code, cause } = error as { code: string; cause?: { code?: string } };
    if (code === 'UNAUTHORIZED') return cause?.code !== 'sign-in-needed' || role !== null;
    return !(code === 'FORBIDDEN' && cause?.code === 'not-allowed');
  }
}

describe('the rights matrix', () => {
  it('names every procedure, and none that there is not', () => {
    expect(procedures.map(([path]) => path).filter((path) => leastFor(path) === undefined)).toEqual([]);
    const there = new Set(procedures.map(([path]) => path));
    expect([...least.keys()].filter((path) => !there.has(path))).toEqual([]);
  });

  it.each(procedures.map(([path]) => path))('lets into %s those roles alone that it says', async (path) => {
    const from = COLUMNS.indexOf(leastFor(path) ?? 'guest');
    for (const [i, column] of COLUMNS.entries()) {
      expect(await letsIn(path, column === 'guest' ? null : column), column).toBe(i >= from);
    }
  });

  it('has every procedure of the review on the moderators’ guard', () => {
    const layers = guards.moderator._middlewares as unknown[];
    const outside = procedures.filter(([path, { _def }]) => path.startsWith('review.') && !_def.middlewares.some((m) => layers.includes(m)));
    expect(outside.map(([path]) => path)).toEqual([]);
  });

  it('only reads in what is open whatever is added', () => {
    const open = procedures.filter(([path]) => OPEN_READS.includes(path.split('.')[0] ?? ''));
    expect(open.filter(([, { _def }]) => _def.type === 'mutation').map(([path]) => path)).toEqual([]);
  });
});
