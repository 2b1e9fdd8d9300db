import { loadCasebook } from '../../../server/casebook/load-casebook';
import { createCaller } from '../../../server/trpc/root';
import type { CaseRecord } from '../../../shared/schemas/case';
import { testDatabase } from '../../setup/test-database';
import { fillDatabase } from '../fixtures/filled-database';
import { smallModel } from '../fixtures/small-model';
import { ownPage } from './test-request';

/** Calls procedures on a database of this test's own, with the cases given. */
export async function testCaller(cases: readonly CaseRecord[]) {
  const { db } = testDatabase();
  await fillDatabase(db, cases);
  const casebook = loadCasebook(db);
  return createCaller({ ...ownPage, db, casebook: () => casebook });
}

/** Calls procedures that ask the casebook alone: the cases are in memory, the database is empty. */
export function memoryCaller(cases: readonly CaseRecord[]) {
  const { db } = testDatabase();
  const casebook = {
    model: smallModel(cases),
    settings: { hash: 'test', fittedAt: null },
    workingUnits: 0,
    demo: false,
    loadedFor: null,
    changeSeq: 0,
    snapshotSeq: null,
    rest: null,
  };
  return createCaller({ ...ownPage, db, casebook: async () => casebook });
}
