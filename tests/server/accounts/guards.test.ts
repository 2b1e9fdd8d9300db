import { describe, expect, it } from 'vitest';
import {
  guards,
  keeperProcedure,
  contributorProcedure,
  guestProcedure,
  moderatorProcedure,
  router,
  signedInProcedure,
  createCallerFactory,
} from '../../../server/trpc/init';
import { appRouter } from '../../../server/trpc/root';
import type { Role } from '../../../shared/domain/can/role';
import { testDatabase } from '../../setup/test-database';
import { ownPage } from '../trpc/test-request';

/** What changes something and is open to who is not signed in: each of them counts tries, or has nothing to guard. */
const OPEN_MUTATIONS = ['account.resetPassword', 'account.signIn', 'account.signOut', 'account.signUp', 'afterReport.sendByKey', 'report.send'];

type Walked = { _def: { type: string; middlewares: unknown[] } };
const procedures = Object.entries(appRouter._def.procedures) as unknown as [string, Walked][];
const layers = Object.values(guards).flatMap((guard) => guard._middlewares as unknown[]);

describe('every procedure that changes something', () => {
  it('stands on a guard, but for those that let people in', () => {
    const unguarded = procedures
      .filter(([, { _def }]) => _def.type === 'mutation' && !_def.middlewares.some((layer) => layers.includes(layer)))
      .map(([path]) => path);
    expect(unguarded.sort()).toEqual(OPEN_MUTATIONS);
  });

  it('is refused to who is not signed in, whatever it is given', async () => {
    const mutations = procedures.filter(([path, { _def }]) => _def.type === 'mutation' && !OPEN_MUTATIONS.includes(path));
    expect(mutations.length).toBeGreaterThan(3);
    const caller = createCallerFactory(appRouter)(context(null)) as unknown as Record<
      string,
      Record<string, (input: unknown) => Promise<unknown>>
    >;
    for (const [path] of mutations) {
      const [area = '', name = ''] = path.split('.');
      await expect(caller[area]?.[name]?.({}), path).rejects.toMatchObject({ code: 'UNAUTHORIZED' });
    }
  });

  it('is refused to a page of another site', async () => {
    const request = { ...ownPage.request, sameOrigin: false };
    const caller = createCallerFactory(appRouter)({ ...context('keeper'), request }) as unknown as Record<
      string,
      Record<string, (input: unknown) => Promise<unknown>>
    >;
    for (const [path, { _def }] of procedures.filter(([, p]) => p._def.type === 'mutation')) {
      const [area = '', name = ''] = path.split('.');
      await expect(caller[area]?.[name]?.({}), `${_def.type} ${path}`).rejects.toMatchObject({
        code: 'FORBIDDEN',
        cause: { code: 'other-origin' },
      });
    }
  });
});

const context = (role: Role | null) => ({
  ...ownPage,
  db: testDatabase().db,
  casebook: () => Promise.reject(new Error('not asked for')),
  actor: role && { id: 'a', role },
});

const guarded = router({
  guest: guestProcedure.query(() => 'in'),
  signedIn: signedInProcedure.query(() => 'in'),
  contributor: contributorProcedure.query(() => 'in'),
  moderator: moderatorProcedure.query(() => 'in'),
  keeper: keeperProcedure.query(() => 'in'),
});

describe('the guards', () => {
  const out = 'UNAUTHORIZED';
  const no = 'FORBIDDEN';
  it.each([
    [null, { guest: 'in', signedIn: out, contributor: out, moderator: out, keeper: out }],
    ['reader', { guest: 'in', signedIn: 'in', contributor: no, moderator: no, keeper: no }],
    ['contributor', { guest: 'in', signedIn: 'in', contributor: 'in', moderator: no, keeper: no }],
    ['moderator', { guest: 'in', signedIn: 'in', contributor: 'in', moderator: 'in', keeper: no }],
    ['keeper', { guest: 'in', signedIn: 'in', contributor: 'in', moderator: 'in', keeper: 'in' }],
  ] as const)('let %s through where they should', async (role, expected) => {
    const caller = createCallerFactory(guarded)(context(role));
    const found = await Promise.all(
      Object.keys(expected).map(async (name) => [
        name,
        await caller[name as keyof typeof expected]().catch((error: { code: string }) => error.code),
      ]),
    );
    expect(Object.fromEntries(found)).toEqual(expected);
  });
});
