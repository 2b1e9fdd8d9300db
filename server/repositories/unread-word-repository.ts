import type { Db } from '../db';

/** A word that look-ups could not read, and in how many of them. */
export type UnreadWordCount = { word: string; count: number };

/** Adds to a month's counts; run it in a transaction. */
export async function addUnreadWords(db: Db, month: string, counts: readonly UnreadWordCount[]): Promise<void> {
  for (const { word, count } of counts) {
    await db.unreadWord.upsert({
      where: { word_month: { word, month } },
      create: { word, month, count },
      update: { count: { increment: count } },
      select: { word: true },
    });
  }
}

/** Words asked at least `least` times since a month (YYYY-MM) and unread, the most frequent first. */
export async function listUnreadWords(
  db: Db,
  { since, least, take }: { since: string; least: number; take: number },
): Promise<UnreadWordCount[]> {
  const rows = await db.unreadWord.groupBy({
    by: ['word'],
    where: { month: { gte: since } },
    _sum: { count: true },
    having: { count: { _sum: { gte: least } } },
    orderBy: [{ _sum: { count: 'desc' } }, { word: 'asc' }],
    take,
  });
  return rows.map(({ word, _sum }) => ({ word, count: _sum.count ?? 0 }));
}

/** Forgets the counts of months before this one. */
export async function deleteUnreadBefore(db: Db, month: string): Promise<void> {
  await db.unreadWord.deleteMany({ where: { month: { lt: month } } });
}
