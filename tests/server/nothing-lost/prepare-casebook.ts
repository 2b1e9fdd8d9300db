import { createDb } from '../../../server/db';
import { fillDatabase } from '../fixtures/filled-database';
import { smallCases } from '../fixtures/small-cases';

/** Fills a migrated, empty database with the small world, some accepted cases, a contributor and a moderator. */
export async function prepareCasebook(databaseFile: string): Promise<void> {
  const db = createDb(`file:${databaseFile}`);
  await fillDatabase(db, smallCases(30));
  const at = new Date(0);
  for (const [id, role] of [
    ['poster', 'contributor'],
    ['moderator', 'moderator'],
  ] as const) {
    await db.user.create({
      data: { id, name: id, username: id, email: `${id}@bench.invalid`, role, createdAt: at, updatedAt: at },
    });
  }
  await db.$disconnect();
}
