import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { forgetLimits } from '../../../server/accounts/limits';
import { type Casebook, loadCasebook } from '../../../server/casebook/load-casebook';
import { createCallerFactory } from '../../../server/trpc/init';
import { readEnv } from '../../../server/env';
import type { CaseSearch } from '../../../server/search/case-search';
import { openSearch } from '../../../server/search/open-search';
import { appRouter } from '../../../server/trpc/root';
import { forgetSubmitLimits } from '../../../server/services/submit-limits';
import { ROLES, type Role } from '../../../shared/domain/can/role';
import { openTestDatabase, type TestDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { plainCase } from '../fixtures/plain-case';
import { smallCases } from '../fixtures/small-cases';
import { type Shape, shapedInput } from './shaped-input';
import { ownPage } from './test-request';

type Walked = { _def: { type: 'query' | 'mutation'; inputs: z.ZodType[] } };
const procedures = Object.entries(appRouter._def.procedures) as unknown as [string, Walked][];

/** Inputs for each procedure and role; the seed is fixed, so that a failure can be looked at again. */
const RUNS = 6;
const SEED = 20_261_125;

let opened: TestDatabase;
let search: CaseSearch;
let casebook: Casebook;
let known: string[];

beforeAll(async () => {
  opened = openTestDatabase();
  const cases = [...smallCases(40), { ...plainCase(1), status: 'submitted' as const }];
  await fillDatabase(opened.db, cases);
  const at = new Date('2026-01-01');
  for (const role of ROLES) {
    const account = { name: role, username: role, email: `${role}@bench.invalid`, role, createdAt: at, updatedAt: at };
    await opened.db.user.create({ data: { id: `account-${role}`, ...account } });
  }
  casebook = await loadCasebook(opened.db);
  search = openSearch(opened.db, readEnv({ DATABASE_URL: opened.url }, '/'));
  const { words } = casebook.model;
  const slugs = [words.symptoms, words.checks, words.causes, words.fixes, words.devices].flatMap((map) => [...map.keys()].slice(0, 4));
  known = [...cases.slice(0, 3).map(({ id }) => id), plainCase(1).id, ...slugs, 'grey screen, clock present', '2026-05', 'high'];
});
afterAll(async () => {
  await search.close();
  await opened.close();
});

type AnyCaller = Record<string, Record<string, (input: unknown) => Promise<unknown>>>;

const callerAs = (role: Role | null) =>
  createCallerFactory(appRouter)({
    ...ownPage,
    db: opened.db,
    casebook: async () => casebook,
    search: () => search,
    actor: role && { id: `account-${role}`, role },
  }) as unknown as AnyCaller;

/** What the input of a procedure looks like; its parts may come from several `input` calls. */
function shapeOf({ _def }: Walked): Shape {
  const [first] = _def.inputs;
  return first === undefined ? {} : (z.toJSONSchema(first, { io: 'input', unrepresentable: 'any' }) as Shape);
}

async function outcome(caller: AnyCaller, path: string, input: unknown): Promise<{ code: string; message: string }> {
  const [area = '', name = ''] = path.split('.');
  try {
    await caller[area]?.[name]?.(input);
    return { code: 'OK', message: '' };
  } catch (error) {
    return error as { code: string; message: string };
  }
}

describe('every procedure', () => {
  it.each(procedures.map(([path, procedure]) => ({ path, procedure })))(
    '$path refuses in words or answers, whatever it is given and by whom',
    async ({ path, procedure }) => {
      const inputs = fc.sample(shapedInput(shapeOf(procedure), known), { numRuns: RUNS, seed: SEED });
      for (const role of [null, ...ROLES]) {
        forgetLimits();
        forgetSubmitLimits();
        for (const input of inputs) {
          const { code, message } = await outcome(callerAs(role), path, input);
          expect(code, `${path} as ${role}: ${JSON.stringify(input)?.slice(0, 400)} -> ${message}`).not.toBe('INTERNAL_SERVER_ERROR');
          expect(message).not.toMatch(/\n\s+at |prisma|sqlite/i);
        }
      }
    },
  );
});
