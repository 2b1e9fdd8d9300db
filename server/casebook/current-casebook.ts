import type { PrismaClient } from '../../prisma/generated/client';
import { findNewestEventId } from '../repositories/event-log-repository';
import { type Casebook, loadCasebook } from './load-casebook';

/** How long the casebook is used before the event log is looked at again, in milliseconds. */
const FRESH_FOR = 10_000;

type Kept = { casebook: Promise<Casebook>; checkedAt: number; checking: boolean };

/** The bundler may load this module several times in one process; the casebook is kept once. */
const kept = globalThis as typeof globalThis & { secondBenchCasebook?: Kept };

/**
 * The process's one casebook, loaded when first asked for; a failed load is tried again next time. Every ten seconds
 * of use the event log is looked at, and where another program has imported, accepted or refitted since, the
 * casebook is loaded anew beside the old one, which answers until then.
 */
export function getCasebook(db: PrismaClient, now: () => number = Date.now): Promise<Casebook> {
  const current = kept.secondBenchCasebook;
  if (current === undefined) return replace(db, now());
  if (!current.checking && now() - current.checkedAt > FRESH_FOR) {
    current.checking = true;
    void refresh(db, current, now);
  }
  return current.casebook;
}

/** Forgets the casebook, so that the next question loads it anew. */
export function forgetCasebook(): void {
  delete kept.secondBenchCasebook;
}

function replace(db: PrismaClient, at: number): Promise<Casebook> {
  const entry: Kept = { casebook: loadCasebook(db), checkedAt: at, checking: false };
  kept.secondBenchCasebook = entry;
  entry.casebook.catch(() => {
    if (kept.secondBenchCasebook === entry) forgetCasebook();
  });
  return entry.casebook;
}

async function refresh(db: PrismaClient, current: Kept, now: () => number): Promise<void> {
  try {
    const { eventId } = await current.casebook;
    if ((await findNewestEventId(db)) !== eventId) {
      const casebook = await loadCasebook(db);
      if (kept.secondBenchCasebook === current) current.casebook = Promise.resolve(casebook);
    }
  } catch (error) {
    console.error('The casebook could not be loaded anew; the one in memory goes on answering.', error);
  } finally {
    current.checkedAt = now();
    current.checking = false;
  }
}
