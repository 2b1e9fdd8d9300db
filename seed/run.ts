// `tsx seed/run.ts [--demo]`: puts the vocabulary into the database that DATABASE_URL names, and with --demo the demo world.
import { addDemoAccounts } from '../server/accounts/demo-accounts';
import { fitAndStore } from '../server/casebook/fit-and-store';
import { createDb, type Db } from '../server/db';
import { getEnv } from '../server/env';
import { caseIdFrom, randomCaseId } from '../server/ids';
import { saveCatalogue } from '../server/repositories/catalogue-repository';
import { appendEvent, hasEvent } from '../server/repositories/event-log-repository';
import { listCases } from '../server/repositories/case-repository';
import { insertCases } from '../server/repositories/insert-cases';
import { saveVocabulary } from '../server/repositories/save-vocabulary';
import { findNewestSettings } from '../server/repositories/model-settings-repository';
import { insertWorkingUnits } from '../server/repositories/working-unit-repository';
import { catalogue } from './catalogue';
import { demoWorld } from './demo-world';
import { seededRandom } from './random';
import { vocabulary } from './vocabulary';
import { seedWaiting } from './waiting/seed-waiting';

const SEED = 20_261_101;
const CASES = 4_200;
const WORKING_UNITS = 420;

/** Opaque ids that come out the same on every run: an interrupted run is taken up where it stopped. */
function idsFrom(seed: string): () => string {
  const random = seededRandom(seed);
  return () => caseIdFrom(Uint8Array.from({ length: 10 }, () => Math.floor(random() * 256)));
}

/** Demo cases and working units into a database that has the vocabulary; does nothing where they are in it already. */
async function seedDemo(db: Db): Promise<void> {
  if (await hasEvent(db, 'seed')) {
    console.log('The demo world is there already.');
    return;
  }
  await saveCatalogue(db, catalogue);
  console.log('Drawing the cases.');
  const caseId = idsFrom(`cases ${SEED}`);
  const cases = demoWorld.drawCases(SEED, CASES).map(({ content }) => ({ id: caseId(), content, status: 'accepted' as const }));
  await insertCases(db, cases, {
    newId: caseId,
    onProgress: (done) => console.log(`Stored ${done} of ${cases.length} cases.`),
  });
  const unitId = idsFrom(`working units ${SEED}`);
  const units = demoWorld.drawWorkingUnits(SEED, WORKING_UNITS).map((unit) => ({ id: unitId(), ...unit }));
  await insertWorkingUnits(db, units, (done) => console.log(`Stored ${done} of ${units.length} working units.`));
  const detail = `${cases.length} invented cases and ${units.length} working units, seed ${SEED}`;
  await appendEvent(db, { id: idsFrom(`event ${SEED}`)(), at: new Date(), kind: 'seed', actor: 'seed', detail });
}

/** Submissions for the demo's moderator to work through. */
async function addWaiting(db: Db): Promise<number> {
  const accepted = await listCases(db, { status: 'accepted', take: 1_000 });
  return seedWaiting(db, { seed: SEED, newId: idsFrom(`waiting ${SEED}`), accepted, now: new Date() });
}

const db = createDb(getEnv().databaseUrl);
try {
  await db.$transaction((tx) => saveVocabulary(tx, vocabulary), { timeout: 60_000 });
  console.log('The vocabulary is in the database.');
  if (process.argv.includes('--demo')) {
    // One transaction: an interrupted run leaves no case without its symptoms and steps.
    await db.$transaction((tx) => seedDemo(tx), { timeout: 180_000, maxWait: 30_000 });
    if ((await findNewestSettings(db)) === null) {
      console.log('Fitting the settings of the statistics, up to half a minute.');
      await fitAndStore(db, new Date(), { newId: randomCaseId, actor: 'seed' });
    }
  }
  // Also where an earlier version of the demo is brought up to date.
  if (await hasEvent(db, 'seed')) {
    const added = await addDemoAccounts(db);
    if (added > 0) console.log(`Added ${added} demo accounts; the sign-in page names them.`);
    const waiting = await db.$transaction((tx) => addWaiting(tx), { timeout: 60_000, maxWait: 30_000 });
    if (waiting > 0) console.log(`Added ${waiting} submissions that wait for review.`);
  }
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
} finally {
  await db.$disconnect();
}
