import type { Db } from '../../db';
import { findWaitingPlace } from '../../repositories/waiting-cases';

const DAY = 86_400_000;

/** Whole days between two moments. */
export const daysBetween = (from: Date, to: Date): number => Math.max(0, Math.floor((to.getTime() - from.getTime()) / DAY));

/** How many whole days a case has waited for its decision; null where it does not wait. */
export async function waitedDays(db: Db, id: string, now: Date): Promise<number | null> {
  const place = await findWaitingPlace(db, id);
  return place && daysBetween(place.since, now);
}
