import { getCasebook } from '../../../server/casebook/current-casebook';
import { getDb } from '../../../server/db';
import { getEnv } from '../../../server/env';
import { migrationsFolderIn, readiness } from '../../../server/watching/readiness';

/** Whether the site can answer questions, and what is missing where it cannot: 200 or 503. Asking starts the loading. */
export async function GET(): Promise<Response> {
  const db = getDb();
  // What goes wrong here shows as a casebook that is not loaded.
  getCasebook(db).catch(() => {});
  const answer = await readiness(db, getEnv().databaseUrl, migrationsFolderIn(process.cwd()));
  return Response.json(answer, { status: answer.ready ? 200 : 503, headers: { 'cache-control': 'no-store' } });
}
