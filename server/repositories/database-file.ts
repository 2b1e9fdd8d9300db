import type { Db } from '../db';

/** Path of the file that a database stands in; null for one in memory. */
export async function findDatabaseFile(db: Db): Promise<string | null> {
  const rows = await db.$queryRaw<{ file: string | null }[]>`select file from pragma_database_list where name = 'main'`;
  return rows[0]?.file || null;
}
